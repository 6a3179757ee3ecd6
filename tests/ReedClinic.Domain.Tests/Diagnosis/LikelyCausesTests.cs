using CsCheck;
using ReedClinic.Domain.Catalogues;
using ReedClinic.Domain.Diagnosis;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Outcomes;

namespace ReedClinic.Domain.Tests.Diagnosis;

public sealed class LikelyCausesTests
{
    private static readonly Catalogue Shipped = Catalogue.Shipped;

    [Fact]
    public void Nothing_seen_gives_the_priors_and_says_so()
    {
        var found = LikelyCauses.Of(Shipped, []);

        Assert.All(found.Causes, one => Assert.Equal(one.Cause.Prior.Value, one.Chance, 1e-12));
        Assert.Equal(["Nothing has been looked at yet: this is only how often each cause is met."], found.Remarks);
    }

    [Fact]
    public void Not_looked_for_is_not_absent()
    {
        var hard = Present("feels-hard");
        double Chance(params Sighting[] seen) => LikelyCauses.Of(Shipped, seen).Causes.Single(one => one.Cause.Id.Value == "tip-thick").Chance;

        Assert.True(Chance(hard) > Chance(hard, Absent("tongue-thuds")) * 1.5);
        Assert.True(Chance(hard, Present("tongue-thuds")) > Chance(hard) * 1.5);
    }

    [Fact]
    public void The_bench_outweighs_the_student_and_the_later_the_earlier()
    {
        var found = LikelyCauses.Of(Shipped, [Absent("opening-wide", 3), Absent("opening-wide", 2), new Sighting(new SignId("opening-wide"), true, true, Teller.Student)]);

        Assert.False(Assert.Single(found.Counted).Present);
        Assert.Equal(["The student says: the opening is wide. At the bench it wasn’t so. The bench counts."], found.Remarks);
        Assert.False(Assert.Single(LikelyCauses.Of(Shipped, [Absent("opening-wide", 3), Present("opening-wide", 2)]).Counted).Present);
    }

    [Fact]
    public void What_was_so_at_the_bench_and_was_put_right_is_not_called_never_so()
    {
        var found = LikelyCauses.Of(Shipped, [new Sighting(new SignId("opening-wide"), false, WasThere: true), new Sighting(new SignId("opening-wide"), true, true, Teller.Student)]);

        Assert.Equal(["The student says: the opening is wide. At the bench it was so, and isn’t any more."], found.Remarks);
        Assert.Contains("it was so, and isn’t", Assert.Single(LikelyCauses.Of(Shipped, [Absent("opening-wide", 3), Present("opening-wide", 2), new Sighting(new SignId("opening-wide"), true, true, Teller.Student)]).Remarks), StringComparison.Ordinal);
    }

    [Fact]
    public void A_flat_crow_rules_out_that_a_reed_is_sharp_and_hard()
    {
        var found = LikelyCauses.Of(Shipped, [Present("feels-hard"), Present("tires-lip"), Present("soft-fails"), Present("crow-low"), Absent("crow-high")]);

        Assert.True(found.Causes.Single(one => one.Cause.Id.Value == "sharp-and-hard").Chance < 0.1);
    }

    [Fact]
    public void What_contradicts_itself_is_left_out_and_what_can_not_both_hold_is_told()
    {
        var found = LikelyCauses.Of(Shipped, [Present("hisses"), Absent("hisses"), Present("crow-high"), Present("crow-low")]);

        Assert.DoesNotContain(found.Counted, one => one.Sign.Value == "hisses");
        Assert.Equal(2, found.Remarks.Count);
        Assert.Contains("can’t both hold", found.Remarks[1], StringComparison.Ordinal);
    }

    [Fact]
    public void Unknown_and_retired_signs_are_left_out_in_plain_words_and_a_retired_cause_is_no_cause()
    {
        var studio = Assert.IsType<Outcome<Catalogue>.Done>(Shipped.With(
            new CatalogueChange.Retire(CatalogueTable.Signs, "hisses"), new CatalogueChange.Retire(CatalogueTable.Causes, "bumps"))).Value;
        var found = LikelyCauses.Of(studio, [Present("hisses"), Present("tongue-unsure"), Present("sings"), Present(null!)]);

        Assert.Equal(3, found.Remarks.Count);
        Assert.Contains("“there is a hiss beside the sound” is no longer used here, and is left out.", found.Remarks);
        Assert.DoesNotContain(found.Causes, one => one.Cause.Id.Value == "bumps");
        Assert.Null(found.Explain(new CauseId("bumps")));
        Assert.Null(found.Explain(default));
    }

    [Fact]
    public void A_suspicion_weighs_less_than_a_certainty_and_more_than_nothing()
    {
        double Chance(IEnumerable<Sighting> seen) => LikelyCauses.Of(Shipped, seen).Causes.Single(one => one.Cause.Id.Value == "bark-island").Chance;

        Assert.InRange(Chance([Present("bark-island") with { Sure = false }]), Chance([]) * 2, Chance([Present("bark-island")]) / 2);
    }

    [Fact]
    public void Everything_at_once_is_an_estimate_that_says_how_far_it_goes()
    {
        var found = LikelyCauses.Of(Shipped, Shipped.Signs.Select(sign => new Sighting(sign.Id, true)));

        Assert.False(found.Exact);
        Assert.Contains(found.Remarks, remark => remark.StartsWith("More than 14 signs hold at once, so this is an estimate", StringComparison.Ordinal));
        AssertSound(found);
        Assert.NotEmpty(found.Explain(found.Causes[0].Cause.Id)!.Reasons);
    }

    [Fact]
    public void A_cause_that_a_studio_never_meets_stays_at_nothing_whatever_is_seen()
    {
        var own = new EvidenceMark(Evidence.CommonPractice);
        var never = new Cause(new CauseId("never"), "never met", null, "It is never met.", own, new Marked<double>(0, own), [new AdjustmentKindId("wait")], own, []);
        var link = new CauseLink(never.Id, new SignId("hisses"), Belonging.Typical, new Marked<double>(0.7, own), own);
        var studio = Assert.IsType<Outcome<Catalogue>.Done>(Shipped.With(new CatalogueChange.AddCause(never, [link]))).Value;
        var found = LikelyCauses.Of(studio, [Present("hisses")]);

        Assert.Equal(0, found.Causes.Single(one => one.Cause == never).Chance);
        AssertSound(found);
        Assert.All(found.Explain(never.Id)!.Reasons, reason => Assert.True(double.IsFinite(reason.Ratio)));
    }

    /// <summary>The odds of a reason are what the definition says: all of the evidence against all but this.</summary>
    [Fact]
    public void What_speaks_for_and_against_is_told_as_odds_with_it_and_without()
    {
        Sighting[] seen = [Present("starts-fuzzy"), Present("soft-fails"), Absent("feels-hard"), Absent("starts-late")];
        var corners = new CauseId("tip-corners-thick");
        double Odds(IEnumerable<Sighting> some) => LikelyCauses.Of(Shipped, some).Causes.Single(one => one.Cause.Id == corners).Chance is var chance ? chance / (1 - chance) : 0;
        var why = LikelyCauses.Of(Shipped, seen).Explain(corners)!;

        Assert.All(why.Reasons, reason => Assert.Equal(Odds(seen) / Odds(seen.Where(one => one.Sign != reason.Sign.Id)), reason.Ratio, 1e-6));
        Assert.Equal("starts-fuzzy", why.Reasons[0].Sign.Id.Value);
        Assert.Equal("starts-late", Assert.Single(why.Against, reason => reason.Mark is not null).Sign.Id.Value);
        Assert.StartsWith("Soft starts have fuzz in them; about ", why.Reasons[0].Words, StringComparison.Ordinal);
        Assert.Contains(why.For, reason => reason is { Sign.Id.Value: "feels-hard", Present: false, Mark: null } && reason.Words.EndsWith(", by way of what else may be behind it.", StringComparison.Ordinal));
    }

    [Fact]
    public void An_explanation_names_the_published_texts_and_no_others()
    {
        var why = LikelyCauses.Of(Shipped, [Present("centre-closes-first"), Present("whole-flat")]).Explain(new CauseId("centre-closes-first"))!;

        Assert.Equal(["woodwind.org forum, message 23926"], why.Sources);
    }

    [Fact]
    public void Whatever_is_put_in_the_chances_are_chances_and_the_remarks_sentences() =>
        Gen.Select(
            Gen.OneOf(Gen.Int[0, Shipped.Signs.Count - 1].Select(at => Shipped.Signs[at].Id), Gen.Const(new SignId("sings")), Gen.Const(default(SignId))),
            Gen.Bool, Gen.Bool, Gen.Bool.Select(bench => bench ? Teller.Bench : Teller.Student), Gen.Int[0, 2],
            (sign, present, sure, by, order) => new Sighting(sign, present, sure, by, order))
            .Array[0, 24].Sample(
                seen =>
                {
                    var found = LikelyCauses.Of(Shipped, seen);
                    AssertSound(found);
                    Assert.All(found.Explain(found.Causes[^1].Cause.Id)!.Reasons, reason => Assert.True(double.IsFinite(reason.Ratio) && reason.Ratio > 0));
                },
                iter: 60, threads: 1);

    private static void AssertSound(LikelyCauses found)
    {
        Assert.All(found.Causes, one =>
        {
            Assert.InRange(one.Chance, 0, 1);
            Assert.InRange(one.Low, 0, one.Chance + 1e-9);
            Assert.InRange(one.High, one.Chance - 1e-9, 1 + 1e-9);
        });
        Assert.All(found.Remarks, remark => Assert.True(remark.EndsWith('.') && !remark.Contains("NaN", StringComparison.Ordinal), remark));
    }

    private static Sighting Present(string sign, int order = 0) => new(new SignId(sign), true, Order: order);

    private static Sighting Absent(string sign, int order = 0) => new(new SignId(sign), false, Order: order);
}
