using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.People;
using ReedClinic.Web.Tests.Guardians;
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

    [Fact]
    public async Task Whoever_is_asked_after_the_studio_put_the_age_right_reads_that_reeds_lie_there_and_a_yes_leads_back_to_them()
    {
        using var student = await host.Student("Signy");
        var batch = (await host.Announce("Signy", "red thread", "blue thread", "white thread")).Batch;
        var path = $"/batches/{batch.Code}";
        using var teacher = await host.Teacher();
        using var seen = await (await Form.At(teacher, $"{path}/arrival")).Set("Form.Reeds[1].Presence", "Missing")
            .Set("Form.Reeds[2].Presence", "Here").Set("Form.Reeds[2].Fitness", "Fit").Set("Form.Reeds[3].Presence", "Here").Set("Form.Reeds[3].Fitness", "Fit").Post();
        using var corrected = await Form.Named(teacher, path, (await teacher.See(path)).Page, "correct-age").Set("Age.Answer", nameof(AgeAnswer.Younger)).Post();
        Assert.NotNull(corrected.Leads());
        await using var scope = host.Services.CreateAsyncScope();
        var db = scope.ServiceProvider.GetRequiredService<ClinicDb>();
        await db.Set<Reed>().Where(reed => reed.Batch == batch.Id && reed.Number == 3).ExecuteUpdateAsync(set => set.SetProperty(reed => reed.Fitness, Fitness.Mould), Ct);

        Assert.Contains("It is noted here that you are younger than 16.", await student.TextAsync("/guardian"), StringComparison.Ordinal);
        Assert.DoesNotContain("You said", await student.TextAsync("/guardian"), StringComparison.Ordinal);
        var question = await host.AskedAsync(student, ClinicHost.NewEmail("rosa"));
        using var guardian = host.Visitor();
        var asked = await guardian.TextAsync(question);
        Assert.Contains("One reed of theirs is at the studio already.", asked, StringComparison.Ordinal);
        Assert.Contains("One reed of theirs came with mould. It is kept apart in a closed bag", asked, StringComparison.Ordinal);
        using var agreed = await Form.Named(guardian, question, (await guardian.See(question)).Page, "agree").Set("Form.Name", "Rosa").Set("Form.Password", ClinicHost.Password).Post();
        Assert.Equal("/wards", agreed.Leads());

        var email = (await db.Set<Student>().SingleAsync(row => row.Id == batch.Student, Ct)).Email!;
        Assert.Equal("/batches", await host.Mailed(email, "/batches"));
    }

    private async Task<(Batch Batch, string Path)> BatchAsync(string name)
    {
        using var student = await host.Student(name);
        var batch = (await host.Announce(name, "blue thread")).Batch;
        return (batch, $"/batches/{batch.Code}");
    }
}
