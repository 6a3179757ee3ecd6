using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.People;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Batches;

public sealed class AgeCorrectionTests(ClinicHost host) : IClassFixture<ClinicHost>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_correction_that_was_not_saved_says_so_and_shows_what_stands()
    {
        var (batch, path) = await BatchAsync("Sunniva");
        using var teacher = await host.Teacher();
        var form = Form.Named(teacher, path, (await teacher.See(path)).Page, "correct-age");

        // An id that was used for something else clashes, as another save at the same moment does.
        await using (var scope = host.Services.CreateAsyncScope())
        {
            var db = scope.ServiceProvider.GetRequiredService<ClinicDb>();
            db.Add(new DoneOperation { Id = new OperationId(Guid.Parse(form["Age.Operation"]!)), Verb = "another", Subject = batch.Id.Value, DoneAt = TimeProvider.System.GetUtcNow() });
            await db.SaveChangesAsync(Ct);
        }

        using var answer = await form.Set("Age.Answer", nameof(AgeAnswer.Younger)).Post();
        var (_, page, leads) = await answer.Read();

        Assert.Null(leads);
        Assert.Contains("somebody else was saving at the same moment", page, StringComparison.Ordinal);
        Assert.Contains("Age: old enough to decide alone", System.Text.RegularExpressions.Regex.Replace(page, @"\s+", " "), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Who_signed_in_long_ago_is_led_to_show_who_they_are_and_nothing_is_changed()
    {
        var (batch, path) = await BatchAsync("Tjorven");
        using var teacher = await host.Teacher();
        var form = Form.Named(teacher, path, (await teacher.See(path)).Page, "correct-age");
        await using var scope = host.Services.CreateAsyncScope();
        var db = scope.ServiceProvider.GetRequiredService<ClinicDb>();
        var longAgo = TimeProvider.System.GetUtcNow().AddHours(-1);
        foreach (var session in await db.Set<Session>().ToListAsync(Ct))
        {
            db.Entry(session).Property(row => row.FreshAt).CurrentValue = longAgo;
        }

        await db.SaveChangesAsync(Ct);

        using var answer = await form.Set("Age.Answer", nameof(AgeAnswer.Younger)).Post();

        Assert.Contains($"/account/again?back={Uri.EscapeDataString(path)}", (await answer.Read()).Page, StringComparison.Ordinal);
        Assert.Equal(AgeAnswer.OldEnough, (await db.Set<Student>().SingleAsync(student => student.Id == batch.Student, Ct)).Age);
    }

    private async Task<(Batch Batch, string Path)> BatchAsync(string name)
    {
        using var student = await host.Student(name);
        var batch = (await host.Announce(name, "blue thread")).Batch;
        return (batch, $"/batches/{batch.Code}");
    }
}
