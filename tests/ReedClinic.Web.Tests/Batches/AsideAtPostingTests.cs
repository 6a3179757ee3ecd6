using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data;
using ReedClinic.Data.Bench;
using ReedClinic.Data.Intake;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Batches;

/// <summary>A reed that was put aside and has no verdict, where a batch is posted back.</summary>
public sealed class AsideAtPostingTests(ClinicHost host) : IClassFixture<ClinicHost>
{
    private static readonly Actor Bench = new(new AccountId(NewId()), null, IsTeacher: true, IsOwner: false);

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Whoever_posts_is_asked_about_it_and_may_post_all_the_same_and_its_student_reads_which_it_is()
    {
        using var student = await host.Student("Solveig");
        var batch = (await host.Announce("Solveig", "blue thread", "red thread")).Batch;
        await ReadyAsync(batch, (1, Done(Verdict.Of(VerdictKind.Improved))), (2, Done(Parked.Of())));
        using var teacher = await host.Teacher();
        var path = $"/batches/{batch.Code}";

        var page = (await teacher.See(path)).Page;
        Assert.Contains("Reed 2 (red thread) was put aside and has no verdict. Does it go home as it is?", page, StringComparison.Ordinal);
        Assert.Contains("Reed 2 (red thread) was put aside at the studio for now, and comes home as it is. It may be played meanwhile, but gently", (await student.See(path)).Page, StringComparison.Ordinal);

        using var posted = await Form.Named(teacher, path, page, "onward").Post();
        Assert.Equal(path, posted.Leads());
        Assert.DoesNotContain("Does it go home as it is?", (await teacher.See(path)).Page, StringComparison.Ordinal);
        Assert.Contains("Reed 2 (red thread) was put aside at the studio", (await student.See(path)).Page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Nobody_is_asked_about_a_reed_that_has_a_verdict_and_no_student_reads_of_one_before_the_letter()
    {
        using var student = await host.Student("Torun");
        var batch = (await host.Announce("Torun", "blue thread", "red thread")).Batch;
        var path = $"/batches/{batch.Code}";
        await ReadyAsync(batch, (1, Done(Verdict.Of(VerdictKind.Improved))), (2, Done(Verdict.Of(VerdictKind.Improved))), (2, Done(Parked.Of())));
        using var teacher = await host.Teacher();

        Assert.DoesNotContain("put aside", (await teacher.See(path)).Page + (await student.See(path)).Page, StringComparison.Ordinal);

        var early = (await host.Announce("Torun", "green thread")).Batch;
        await ReadyAsync(early, sent: false, (1, Done(Parked.Of())));
        Assert.DoesNotContain("put aside", (await student.See($"/batches/{early.Code}")).Page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_the_teacher_wrote_of_its_playing_stands_in_the_letter_and_the_page_says_nothing_else()
    {
        using var student = await host.Student("Yrsa");
        var batch = (await host.Announce("Yrsa", "blue thread")).Batch;
        await ReadyAsync(batch, (1, Done(Parked.Of("please don’t play it before it has rested a week"))));

        var page = (await student.See($"/batches/{batch.Code}")).Page;
        Assert.Contains("comes home as it is. Please read what the letter says of it before it is played.", page, StringComparison.Ordinal);
        Assert.DoesNotContain("It may be played", page, StringComparison.Ordinal);
    }

    private Task ReadyAsync(Batch batch, params (int Reed, BenchEntry Entry)[] said) => ReadyAsync(batch, true, said);

    private async Task ReadyAsync(Batch batch, bool sent, params (int Reed, BenchEntry Entry)[] said)
    {
        var fine = new ReedArrival(Presence.Here, Fitness: Fitness.Fit);
        Done(await host.Services.GetRequiredService<ArrivalBook>().RecordAsync(Bench, batch.Id, new(batch.Reeds.ToDictionary(reed => reed.Id, _ => fine), null), batch.Version, new(NewId()), Ct));
        foreach (var (reed, entry) in said)
        {
            Done(await host.Services.GetRequiredService<BenchBook>().RecordAsync(Bench, batch.Reeds.Single(one => one.Number == reed).Id, entry, new(NewId()), Ct));
        }

        if (sent)
        {
            await using var scope = host.Services.CreateAsyncScope();
            var db = scope.ServiceProvider.GetRequiredService<ClinicDb>();
            (await db.Set<Batch>().SingleAsync(one => one.Id == batch.Id, Ct)).Reach(Stage.LetterSent, TimeProvider.System.GetUtcNow());
            await db.SaveChangesAsync(Ct);
        }
    }

    private static T Done<T>(Outcome<T> outcome) => Assert.IsType<Outcome<T>.Done>(outcome).Value;

    private static Guid NewId() => Guid.CreateVersion7(TimeProvider.System.GetUtcNow());
}
