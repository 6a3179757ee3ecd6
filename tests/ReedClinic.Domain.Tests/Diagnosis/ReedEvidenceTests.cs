using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Catalogues;
using ReedClinic.Domain.Diagnosis;
using ReedClinic.Domain.Diagnosis.Proposals;
using ReedClinic.Domain.Diagnosis.Settling;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.Tests.Bench;
using ReedClinic.Domain.Tests.Bench.Advice;

namespace ReedClinic.Domain.Tests.Diagnosis;

/// <summary>What is reasoned of one reed, read from marks, arrival and log.</summary>
public sealed class ReedEvidenceTests
{
    private static readonly CauseId Corners = new("tip-corners-thick");

    [Fact]
    public void Nothing_known_names_no_cause_asks_for_the_first_looks_and_stops()
    {
        var scene = new AdviceScene();
        var evidence = Of(scene);

        Assert.True(evidence.IsBare);
        Assert.Empty(evidence.Likely);
        Assert.Contains("Nothing has been looked at yet: this is only how often each cause is met.", evidence.Now.Causes.Remarks);
        Assert.All(evidence.Next.Proposals, one => Assert.True(one.Kind is ProposalKind.Look or ProposalKind.Stop));
        Assert.Contains(evidence.Unlooked, one => one.Bits > 0);
        Assert.Contains("can’t be told", evidence.Settling.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Marks_arrival_and_log_are_read_and_what_is_beside_the_reed_is_always_named()
    {
        var scene = new AdviceScene(scales: ReedScales.Nothing with { Response = new ScaleMark(2) });
        scene.Found("tip-corners-thick");
        var evidence = Of(scene);

        Assert.Equal(Corners, evidence.Likely[0].Cause.Id);
        Assert.Contains(evidence.Now.Causes.Counted, one => one.By == Teller.Student);
        Assert.Contains(evidence.BesideReed, one => one.Cause.Id.Value == "instrument");
        Assert.Contains(evidence.BesideReed, one => one.Cause.Id.Value == "player");
        Assert.DoesNotContain(evidence.Likely, one => one.Cause.Id.Value is "instrument" or "player");
    }

    [Theory]
    [InlineData(4, 0, true)]
    [InlineData(3, 2, true)]
    [InlineData(3, 0, false)]
    [InlineData(2, 2, false)]
    public void What_was_seen_at_the_bench_was_found_and_is_not_weighed(int opening, int marked, bool found)
    {
        var scene = new AdviceScene(scales: marked == 0 ? ReedScales.Nothing : ReedScales.Nothing with { Opening = new ScaleMark(marked) });
        scene.Say(Writer.Test(TestKind.Opening, opening));
        var seen = Of(scene).Found.Select(one => one.Cause.Id.Value).ToList();
        scene.Say(Writer.Value(CauseJudged.Of(new CauseId("too-open"), CauseAnswer.Dismissed)));

        Assert.Equal(found ? ["too-open"] : [], seen);
        Assert.Empty(Of(scene).Found);
    }

    [Fact]
    public void What_was_itself_seen_stands_before_what_is_only_weighed_though_another_explains_it()
    {
        var scene = new AdviceScene(scales: ReedScales.Nothing with { Opening = new ScaleMark(2) });
        scene.Found("opening-wide");
        scene.Found("centre-closes-first");
        var evidence = Of(scene);
        var foremost = evidence.Foremost.Select(one => one.Cause.Id.Value).ToList();

        Assert.Equal(["centre-closes-first", "too-open"], foremost.Take(2).Order(StringComparer.Ordinal));
        Assert.Equal(foremost.Count, foremost.Distinct().Count());
        Assert.True(evidence.Likely.ToList().FindIndex(one => one.Cause.Id.Value == "centre-closes-first") > 1, "weighed alone, flat and hard explains it away");
    }

    [Fact]
    public void What_a_teacher_says_of_a_cause_on_this_reed_counts_before_the_signs()
    {
        var scene = new AdviceScene();
        scene.Effort(4);
        var before = Chance(Of(scene));
        scene.Say(Writer.Value(CauseJudged.Of(Corners, CauseAnswer.Confirmed)));
        var confirmed = Of(scene);
        scene.Say(Writer.Value(CauseJudged.Of(Corners, CauseAnswer.Dismissed)));
        var dismissed = Of(scene);
        scene.Say(Writer.Value(CauseJudged.Of(Corners, CauseAnswer.Open)));

        Assert.True(Chance(confirmed) > 0.9);
        Assert.True(Chance(dismissed) < 0.02);
        Assert.Contains(dismissed.Likely, one => one.Cause.Id == Corners);
        Assert.Equal(before, Chance(Of(scene)), 1e-12);
        Assert.Contains(confirmed.Next.Proposals, one => one.Adjustment?.Value == "thin-corners");
        Assert.DoesNotContain(dismissed.Next.Proposals, one => one.Adjustment?.Value == "thin-corners");
    }

    [Fact]
    public void Contradictions_are_told_and_every_chance_is_a_number()
    {
        var scene = new AdviceScene();
        scene.Found("tip-thick");
        scene.Found("tip-thin");
        scene.Found("opening-wide");
        scene.Found("opening-narrow");
        scene.Say(Writer.Value(LookedFor.Of(new("tip-thick"))));
        var evidence = Of(scene);

        Assert.All(evidence.Now.Causes.Causes, one => Assert.InRange(one.Chance, 0, 1));
        Assert.All(evidence.Unlooked, one => Assert.True(double.IsFinite(one.Bits) && one.IfThere is >= 0 and <= 1 && one.IfNot is >= 0 and <= 1));
        Assert.Contains(evidence.Next.Remarks, remark => remark.Contains("can’t both hold: look again", StringComparison.Ordinal));
    }

    [Fact]
    public void One_of_two_findings_of_a_kind_that_has_gone_does_not_hide_the_other()
    {
        var scene = new AdviceScene();
        var left = scene.Found("tip-corners-thick");
        scene.Found("tip-corners-thick");
        scene.Say(Writer.Value(FindingEnded.Of(left, FindingEnding.Gone)));

        Assert.True(Chance(Of(scene)) > 0.5);
    }

    [Fact]
    public void Every_fault_at_once_is_an_estimate_that_says_so_and_no_nonsense()
    {
        var scene = new AdviceScene();
        foreach (var kind in FindingCatalogue.All.Where(kind => kind.Usually == FindingCharacter.Fault))
        {
            scene.Found(kind.Id.Value);
        }

        var evidence = Of(scene);

        Assert.False(evidence.Now.Causes.Exact);
        Assert.Contains(evidence.Now.Causes.Remarks, remark => remark.Contains("this is an estimate", StringComparison.Ordinal));
        Assert.All(evidence.Likely, one => Assert.True(one.Low >= 0 && one.Low <= one.Chance && one.Chance <= one.High && one.High <= 1));
        Assert.DoesNotContain(evidence.Next.Proposals.SelectMany(one => one.Words.All), words => words.Contains("NaN", StringComparison.Ordinal));
        Assert.NotNull(QuietStep.Of(evidence, scene.Writer.Log));
    }

    [Fact]
    public void A_retired_entry_in_use_is_told_in_a_plain_sentence()
    {
        var scene = new AdviceScene();
        scene.Found("tip-corners-thick");
        var studio = Assert.IsType<Outcome<Catalogue>.Done>(Catalogue.Shipped.With(
            new CatalogueChange.Retire(CatalogueTable.Signs, "tip-corners-thick"), new CatalogueChange.Retire(CatalogueTable.Adjustments, "thin-corners"))).Value;
        var evidence = ReedEvidence.Of(studio, scene.Writer.Log, scene.Reed, scene.Batch);

        Assert.Contains(evidence.Next.Remarks, remark => remark.EndsWith("is no longer used here, and is left out.", StringComparison.Ordinal));
        Assert.DoesNotContain(evidence.Next.Proposals, one => one.Adjustment?.Value == "thin-corners");
    }

    [Fact]
    public void The_test_that_would_tell_most_comes_first_and_says_which_way()
    {
        var scene = new AdviceScene();
        scene.Effort(4);
        var evidence = Of(scene);
        var first = evidence.Unlooked[0];

        Assert.True(first.IfThere > first.IfNot);
        Assert.Equal(evidence.Unlooked.Count, evidence.Unlooked.Select(one => one.Test.Id).Distinct().Count());
        Assert.Equal(evidence.Unlooked.OrderByDescending(one => one.Bits), evidence.Unlooked);
        Assert.DoesNotContain(evidence.Unlooked, one => evidence.Now.Causes.Counted.Any(seen => seen.Sign == one.Sign.Id));
    }

    // Cover and Thomas, Elements of Information Theory, 2nd ed. (2006), section 2.4: I(X;Y) from the four joint chances.
    [Fact]
    public void What_a_test_would_tell_is_the_mutual_information_of_sign_and_cause()
    {
        var causes = LikelyCauses.Of(Catalogue.Shipped, []);
        foreach (var one in WouldTell.Of(Catalogue.Shipped, causes, 200).Where(one => Catalogue.Shipped.LinksOf(one.Sign.Id).Count() == 1))
        {
            var (q, p) = (one.Cause.Prior.Value, (one.IfThere, one.IfNot));
            var there = (q - p.IfNot) / (p.IfThere - p.IfNot);
            double Part(double joint, double left, double right) => joint * Math.Log2(joint / (left * right));
            var sum = Part(there * p.IfThere, there, q) + Part(there * (1 - p.IfThere), there, 1 - q) + Part((1 - there) * p.IfNot, 1 - there, q) + Part((1 - there) * (1 - p.IfNot), 1 - there, 1 - q);

            Assert.Equal(sum, one.Bits, 1e-9);
        }
    }

    [Theory]
    [InlineData(0, "unlikely", "more than 99 to 1 against", "under 1 in 100")]
    [InlineData(0.1, "less likely", "about 9 to 1 against", "10 in 100")]
    [InlineData(0.25, "possible", "about 3 to 1 against", "25 in 100")]
    [InlineData(0.5, "as likely as not", "even odds", "50 in 100")]
    [InlineData(0.6, "likely", "about 3 to 2 for", "60 in 100")]
    [InlineData(0.9, "very likely", "about 9 to 1 for", "90 in 100")]
    [InlineData(1, "very likely", "more than 99 to 1 for", "over 99 in 100")]
    public void A_chance_has_a_word_and_odds(double chance, string word, string odds, string hundredths) =>
        Assert.Equal((word, odds, hundredths), (ChanceWords.Word(chance), ChanceWords.Odds(chance), ChanceWords.Hundredths(chance)));

    [Fact]
    public void A_rest_counts_as_better_some_hours_later_and_with_no_work_between_or_since()
    {
        var scene = new AdviceScene();
        scene.Effort(4);
        scene.Writer.Add(Writer.Test(TestKind.Effort, 3), 30);
        Assert.Null(Rested.GotBetter(scene.Writer.Log));
        var late = scene.Writer.Add(Writer.Test(TestKind.Effort, 3), 600);
        Assert.False(Rested.GotBetter(scene.Writer.Log));
        scene.Writer.Add(Writer.Test(TestKind.Effort, 2), 3000, supersedes: late);
        Assert.True(Rested.GotBetter(scene.Writer.Log));
        scene.Writer.Add(Writer.Work(), 3001);
        Assert.Null(Rested.GotBetter(scene.Writer.Log));
        scene.Writer.Add(Writer.Test(TestKind.Effort, 4), 3002);
        var hasty = scene.Writer.Add(Writer.Test(TestKind.Effort, 3), 3030);
        scene.Writer.Add(Writer.Test(TestKind.Effort, 2), 5000, supersedes: hasty);
        Assert.Null(Rested.GotBetter(scene.Writer.Log));
    }

    private static ReedEvidence Of(AdviceScene scene) => ReedEvidence.Of(Catalogue.Shipped, scene.Writer.Log, scene.Reed, scene.Batch);

    private static double Chance(ReedEvidence evidence) => evidence.Now.Causes.Causes.Single(one => one.Cause.Id == Corners).Chance;
}
