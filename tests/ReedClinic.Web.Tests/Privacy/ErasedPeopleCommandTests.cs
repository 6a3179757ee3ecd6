using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Privacy;
using ReedClinic.Domain.People;
using ReedClinic.Web.Background;
using ReedClinic.Web.Shared.Hosting;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Privacy;

/// <summary>Whoever was erased doesn't come back with a back-up.</summary>
public sealed class ErasedPeopleCommandTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Theory, OnBothEngines]
    public async Task Whoever_stands_on_the_list_is_erased_from_a_restored_database_and_nobody_else(ClinicEngine engine)
    {
        var (now, restored) = (await databases.FreshAsync(engine), await databases.FreshAsync(engine));
        var (gone, stays) = (new StudentId(Parcel.NewOperation().Value), new StudentId(Parcel.NewOperation().Value));
        var at = DateTimeOffset.FromUnixTimeMilliseconds(1_772_442_000_000);
        await using (var context = now.CreateDbContext())
        {
            context.Add(new ErasedPerson { Person = gone.Value, ErasedAt = at, BackupsGoneAt = at.AddDays(35) });
            context.Add(new ErasedPerson { Person = Parcel.NewOperation().Value, ErasedAt = at, BackupsGoneAt = at.AddDays(35) });
            await context.SaveChangesAsync(Ct);
        }

        await using var after = restored.CreateDbContext();
        after.AddRange(new Student(gone, "Ines"), new Student(stays, "Tomas"));
        await after.SaveChangesAsync(Ct);

        var (listed, list) = await RunAsync(now, ErasedPeopleCommand.ListAsync);
        var file = Path.GetTempFileName();
        await File.WriteAllTextAsync(file, list, Ct);
        var (erased, told) = await RunAsync(restored, (args, words) => ErasedPeopleCommand.EraseAgainAsync([file, .. args], words));

        Assert.Equal((0, 0), (listed, erased));
        Assert.Contains("Of 2 who were erased before, 1 were in this database", told, StringComparison.Ordinal);
        Assert.Equal(stays, (await after.Set<Student>().AsNoTracking().SingleAsync(Ct)).Id);
        Assert.Equal(2, await after.Set<ErasedPerson>().CountAsync(Ct)); // the list is whole again
        File.Delete(file);
    }

    [Fact]
    public async Task A_file_that_is_no_list_erases_nobody()
    {
        var db = await databases.FreshAsync(ClinicEngine.Sqlite);
        var student = new StudentId(Parcel.NewOperation().Value);
        await using var context = db.CreateDbContext();
        context.Add(new Student(student, "Ines"));
        await context.SaveChangesAsync(Ct);
        var file = Path.GetTempFileName();
        await File.WriteAllTextAsync(file, $"{student.Value}\nInes\n", Ct);

        var (code, told) = await RunAsync(db, (args, words) => ErasedPeopleCommand.EraseAgainAsync([file, .. args], words));
        var (missing, _) = await RunAsync(db, (args, words) => ErasedPeopleCommand.EraseAgainAsync([file + ".none", .. args], words));

        Assert.Equal((1, 1), (code, missing));
        Assert.Contains("line 2", told, StringComparison.Ordinal);
        Assert.True(await context.Set<Student>().AnyAsync(Ct));
        File.Delete(file);
    }

    private static async Task<(int Code, string Words)> RunAsync(TestDatabase db, Func<string[], Announcement, Task<int>> command)
    {
        await using var words = new StringWriter();
        var code = await command([.. db.Settings.Select(setting => $"--{setting.Key}={setting.Value}")], new Announcement(words));
        return (code, words.ToString());
    }
}
