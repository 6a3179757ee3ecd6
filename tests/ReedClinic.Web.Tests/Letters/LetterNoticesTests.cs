using AngleSharp.Html.Parser;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data.Bench;
using ReedClinic.Data.Intake;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Reeds;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Letters;

/// <summary>What a letter leaves out is told to its teacher, with the way to it, until the part about that reed has other words.</summary>
public sealed class LetterNoticesTests(ClinicHost host) : IClassFixture<ClinicHost>
{
    private static readonly Actor Bench = new(new AccountId(NewId()), null, IsTeacher: true, IsOwner: false);

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task What_is_taken_back_leads_to_its_bench_and_what_was_blunt_is_told_until_the_part_has_other_words()
    {
        using var student = await host.Student();
        using var teacher = await host.Teacher();
        var code = await BatchWorkedOn.Of(host, student);
        var path = $"/batches/{code}/letter";
        var reed = await LeftOut(code);

        var told = await NoticesAsync(teacher, path);
        Assert.Contains(told, one => one.Words.Contains("“there was no crack”. The letter says nothing of it.", StringComparison.Ordinal) && one.Leads == $"/bench/{reed.Value}");
        Assert.Contains(told, one => one.Words.Contains("What a mess.", StringComparison.Ordinal));

        using var saved = await (await Form.At(teacher, path)).Set("Block.reed-1-story", "It took more than I had thought.").Post();
        Assert.Equal($"{path}?done=saved", saved.Leads());

        var left = await NoticesAsync(teacher, path);
        Assert.Contains(left, one => one.Words.Contains("“there was no crack”", StringComparison.Ordinal));
        Assert.DoesNotContain(left, one => one.Words.Contains("What a mess.", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_reason_for_the_student_is_not_lost_where_the_part_is_written_by_hand_in_the_same_press()
    {
        const string reason = "They hold better; tell me after a week how long.";
        using var student = await host.Student();
        using var teacher = await host.Teacher();
        var path = $"/batches/{await BatchWorkedOn.Of(host, student)}/letter";
        var form = await Form.At(teacher, path);
        Assert.Contains("name=\"Reason.bothers-two\"", (await teacher.See(path)).Page, StringComparison.Ordinal);

        using var saved = await form.Set("Block.reed-2-story", "I tried it for a while.").Set("Reason.bothers-two", reason).Post();

        Assert.Equal($"{path}?done=saved", saved.Leads());
        using var page = new HtmlParser().ParseDocument((await teacher.See(path)).Page);
        Assert.Contains(page.QuerySelectorAll("p"), line => line.TextContent.Trim() == reason);
        Assert.Contains(page.QuerySelectorAll("p"), line => line.TextContent.Trim() == "I tried it for a while.");
    }

    /// <summary>A knife that was asked for by hand, and a caution that was taken out by hand, each lead to the place where it stands.</summary>
    [Theory]
    [InlineData("reed-1-story", "Scrape the heart yourself.", "you wrote: “Scrape the heart yourself.”")]
    [InlineData("cautions", "Mind the dust.", "A caution was taken out of “Please mind”")]
    public async Task What_was_written_against_the_advice_leads_to_the_part_it_stands_in(string part, string words, string notice)
    {
        using var student = await host.Student();
        using var teacher = await host.Teacher();
        var path = $"/batches/{await BatchWorkedOn.Of(host, student)}/letter";
        Assert.DoesNotContain(await NoticesAsync(teacher, path), one => one.Words.Contains(notice, StringComparison.Ordinal));

        using var saved = await (await Form.At(teacher, path)).Set("Block." + part, words).Post();

        Assert.Equal($"{path}?done=saved", saved.Leads());
        var leads = Assert.Single(await NoticesAsync(teacher, path), one => one.Words.Contains(notice, StringComparison.Ordinal)).Leads!;
        Assert.StartsWith(path + "#", leads, StringComparison.Ordinal);
        using var page = new HtmlParser().ParseDocument((await teacher.See(path)).Page);
        Assert.Equal("Block." + part, page.GetElementById(leads[(path.Length + 1)..])?.GetAttribute("name"));
    }

    /// <summary>What is only proposed isn’t said by the way, while something else is kept.</summary>
    [Fact]
    public async Task A_proposed_reason_stands_in_its_field_and_is_taken_only_where_the_gaps_are_filled_in()
    {
        const string proposed = "What decided it: the tip that is too thin.";
        using var student = await host.Student();
        using var teacher = await host.Teacher();
        var code = await BatchWorkedOn.Of(host, student);
        var path = $"/batches/{code}/letter";
        var reed = (await host.Services.GetRequiredService<DeskBook>().BatchAsync(Bench, Done(BatchCode.Read(code)), Ct))!.Batch.Reeds[0].Id;
        foreach (var entry in new BenchEntry[] { Done(Finding.Of(new("tip-thin"), FindingCharacter.Fault, new Place(Zone.TipEdge))), Done(Verdict.Of(VerdictKind.NotToBeSaved)) })
        {
            Done(await host.Services.GetRequiredService<BenchBook>().RecordAsync(Bench, reed, entry, new OperationId(NewId()), Ct));
        }

        var form = await Form.At(teacher, path);
        Assert.Equal(proposed, form["Reason.given-up-one"]);
        using var saved = await form.Set("Block.reed-2-story", "I tried it for a while.").Set("Step", "save").Post();
        Assert.Equal($"{path}?done=saved", saved.Leads());
        Assert.Equal(0, await SaidAsync());

        using var mended = await (await Form.At(teacher, path)).Set("Step", "mend").Post();
        Assert.NotNull(mended.Leads());
        Assert.Equal(1, await SaidAsync());

        async Task<int> SaidAsync()
        {
            using var page = new HtmlParser().ParseDocument((await teacher.See(path)).Page);
            return page.QuerySelectorAll("textarea").Count(part => part.TextContent.Contains(proposed, StringComparison.Ordinal));
        }
    }

    private static async Task<List<(string Words, string? Leads)>> NoticesAsync(HttpClient teacher, string path)
    {
        using var page = new HtmlParser().ParseDocument((await teacher.See(path)).Page);
        return [.. page.QuerySelectorAll("fieldset.letter-gap").Select(gap => (gap.QuerySelector("legend")!.TextContent, gap.QuerySelector("a")?.GetAttribute("href")))];
    }

    private async Task<ReedId> LeftOut(string code)
    {
        var reed = (await host.Services.GetRequiredService<DeskBook>().BatchAsync(Bench, Done(BatchCode.Read(code)), Ct))!.Batch.Reeds[0].Id;
        var log = host.Services.GetRequiredService<BenchBook>();
        var crack = Done(await log.RecordAsync(Bench, reed, Done(Finding.Of(new("tip-cracked"), FindingCharacter.Fault, new Place(Zone.TipEdge))), new OperationId(NewId()), Ct)).Root;
        foreach (var entry in new BenchEntry[] { Done(FindingEnded.Of(crack, FindingEnding.Gone, "there was no crack")), Done(Stopped.Of("What a mess.")) })
        {
            Done(await log.RecordAsync(Bench, reed, entry, new OperationId(NewId()), Ct));
        }

        return reed;
    }

    private static T Done<T>(Outcome<T> outcome) => Assert.IsType<Outcome<T>.Done>(outcome).Value;

    private static Guid NewId() => Guid.CreateVersion7(TimeProvider.System.GetUtcNow());
}
