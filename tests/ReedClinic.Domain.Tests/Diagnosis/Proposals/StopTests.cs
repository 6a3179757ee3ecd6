using CsCheck;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Catalogues;
using ReedClinic.Domain.Diagnosis;
using ReedClinic.Domain.Diagnosis.Proposals;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Diagnosis.Proposals;

/// <summary>To stop is always among what is proposed; what binds, binds; and whatever comes in, plain sentences come out.</summary>
public sealed class StopTests
{
    [Fact]
    public void A_reed_that_goes_back_by_post_is_not_kept_for_days_and_one_that_was_worked_on_is_not_soaked_again()
    {
        var open = Cases.With("opening-wide", "sounds-airy");
        Assert.NotNull(Cases.Next(open).Of("wait"));
        Assert.Contains("by post", Cases.Next(open with { ByPost = true }).WhyNot("wait"), StringComparison.Ordinal);

        var dry = Cases.With("opening-narrow", "crow-high");
        var worked = dry with { ByPost = true, Work = [new WorkDone(Cases.Kind("close-press"), new Place(Zone.Opening), 1)] };
        Assert.Contains("wet enough", Bars.Of(worked, Cases.Shipped.Find(Cases.Kind("soak"))!)!.Reason, StringComparison.Ordinal);
        Assert.Null(Bars.Of(dry with { ByPost = true }, Cases.Shipped.Find(Cases.Kind("soak"))!));
    }

    [Fact]
    public void To_stop_is_always_a_candidate_and_all_that_is_left_is_worth_more()
    {
        var random = new Random(3);
        foreach (var next in Cases.Shipped.Causes.Select(cause => Cases.Next(Cases.Now(Cases.Spoilt(cause, random)))))
        {
            var stop = Assert.Single(next.Proposals, one => one.Kind == ProposalKind.Stop);
            Assert.All(next.Proposals.Where(one => one.Kind is ProposalKind.Undoable or ProposalKind.Cane), one => Assert.True(one.Value > stop.Value));
        }
    }

    /// <summary>The same reed; only what the work would do is worse. Then harm is more than gain, and to stop comes first.</summary>
    [Fact]
    public void Where_more_harm_than_gain_is_expected_to_stop_comes_first()
    {
        var now = Cases.With("tip-corners-thick", "starts-fuzzy", "soft-fails");
        Assert.NotEqual(ProposalKind.Stop, Cases.Next(now).First.Kind);
        var worse = Enum.GetValues<EffectScale>().SelectMany(scale => Cases.Shipped.Adjustments.Select(entry => (entry.Id, scale)))
            .Aggregate(AdjustmentEffects.Usual, (effects, one) => effects.With(one.Id, one.scale, new EffectEstimate(-2, -2, -2, EvidenceMark.OwnDefault)));
        var next = Cases.Next(now with { Effects = worse });

        Assert.Equal(ProposalKind.Stop, next.First.Kind);
        Assert.Equal("Stop here.", next.First.Words.Do);
        Assert.Null(next.FirstDeed);
    }

    [Fact]
    public void A_reed_on_which_everything_is_right_is_left_as_it_is()
    {
        string[] faults = ["starts-late", "whole-sharp", "whole-flat", "feels-hard", "feels-easy", "opening-wide", "sounds-bright", "sounds-dull", "swell-wild"];
        var next = Cases.Next(Cases.Now([.. faults.Select(Cases.Absent)]));

        Assert.Equal(ProposalKind.Stop, next.First.Kind);
        Assert.Equal("What is right stays right.", next.First.Words.Expect);
    }

    [Fact]
    public void The_more_is_right_and_the_more_was_done_the_more_it_is_worth_to_stop()
    {
        static double Worth(ReedNow now) => new Worth(now, new ScaleStands(now)).OfStopping;
        var hard = Cases.With("feels-hard");

        Assert.True(Worth(Cases.Now(Cases.Present("feels-hard"), Cases.Absent("starts-late"))) > Worth(hard));
        Assert.True(Worth(hard with { Work = [Done(1), Done(2)] }) > Worth(hard));
    }

    [Fact]
    public void What_was_worked_already_is_hoped_of_for_less()
    {
        var now = Cases.With("tip-corners-thick", "starts-fuzzy", "soft-fails");
        var again = now with { Work = [Done(1), Done(2), Done(3)] };

        Assert.True(Hope(now, "thin-corners") > Hope(again, "thin-corners") * 2);
        Assert.True(Hope(again, "thin-edge") > Hope(now, "thin-edge")); // the next step moves up
        static double Hope(ReedNow reed, string id) => new Worth(reed, new ScaleStands(reed)).Of(Cases.Shipped.Find(Cases.Kind(id))!) is var weighed ? weighed.Gain : 0;
    }

    [Fact]
    public void A_place_that_is_left_alone_is_left_alone_by_every_proposal_and_named()
    {
        var now = Cases.With("tip-corners-thick", "starts-fuzzy", "soft-fails") with { LeftAlone = [new KeptPlace(new Place(Zone.TipCorners), "they are paper already")] };
        var next = Cases.Next(now);

        Assert.DoesNotContain("thin-corners", next.Deeds());
        Assert.DoesNotContain(next.Deeds(), deed => deed is "clip" or "clip-hair" or "thin-whole-tip"); // these reach the corners too
        Assert.Equal("To be left alone: tip corners. they are paper already", next.WhyNot("thin-corners"));
        Assert.All(next.Proposals.Where(one => one.Kind != ProposalKind.Look), one => Assert.Contains("Leave alone: tip corners.", one.Words.NotTouch));
    }

    [Fact]
    public void The_students_permission_binds_until_more_was_agreed()
    {
        var now = Cases.With("opening-wide", "tip-thick", "starts-late", "tongue-thuds", "soft-fails");
        var safe = Cases.Next(now with { Permission = Permission.SafeChangesOnly });

        Assert.DoesNotContain(safe.Proposals, one => one.IsCane());
        Assert.Contains("close-press", safe.Deeds());
        Assert.Contains("safe changes only", safe.WhyNot("thin-corners"), StringComparison.Ordinal);
        Assert.Empty(Cases.Next(now with { Permission = Permission.AdviseOnly }).Deeds().Except(["check-player", "check-instrument"]));
        Assert.Contains(Cases.Next(now with { Permission = Permission.AdviseOnly, AgreedSince = true }).Proposals, one => one.IsCane());
    }

    [Fact]
    public void A_clip_needs_length_and_an_unmeasured_reed_is_measured_first()
    {
        var now = Cases.With("crow-low", "whole-flat", "tip-long", "crow-falls-with-air") with { Floor = ReedLengths.FloorOf(Instrument.Oboe, ScrapeStyle.LongScrape) };

        Assert.Contains("length", Cases.Next(now).Tests());
        Assert.Contains("clip-hair", Cases.Next(now with { Length = Long(70) }).Deeds());
        Assert.Contains("66.1 mm", Cases.Next(now with { Length = Long(66.1m) }).WhyNot("clip-hair"), StringComparison.Ordinal);
        Assert.Contains("clip-hair", Cases.Next(now with { Length = Long(66.2m) }).Deeds());
        Assert.DoesNotContain("clip", Cases.Next(now with { Length = Long(66.2m) }).Deeds());
        Assert.DoesNotContain("clip-hair", Cases.Next(now with { Length = Long(0) }).Deeds()); // zero length known
    }

    [Fact]
    public void A_short_scrape_has_no_windows_and_a_cor_anglais_no_cork()
    {
        var back = Cases.Now(Cases.Present("back-thick"), Cases.Present("low-late"), Cases.Present("crow-high-only"), Cases.Absent("whole-sharp"));

        Assert.Contains("open-windows", Cases.Next(back with { Scrape = ScrapeStyle.LongScrape }).Deeds());
        Assert.DoesNotContain("open-windows", Cases.Next(back with { Scrape = ScrapeStyle.ShortScrape }).Deeds());
        Assert.Contains("scrape-lay-base", Cases.Next(Cases.With("low-stiff", "low-late") with { Scrape = ScrapeStyle.ShortScrape }).Deeds());
        Assert.Contains("refit-cork", Cases.Next(Cases.With("cork-loose", "wobbles")).Deeds());
        Assert.DoesNotContain("refit-cork", Cases.Next(Cases.With("cork-loose", "wobbles") with { Instrument = Instrument.CorAnglais }).Deeds());
    }

    [Fact]
    public void With_no_evidence_it_is_said_to_look_first_and_nothing_is_done()
    {
        var next = Cases.Next(new ReedNow(Cases.Shipped, LikelyCauses.Of(Cases.Shipped, [])));

        Assert.Equal(["ready-puff", "seal-draw", "another-reed", "another-player", "crow-soft"], next.Tests());
        Assert.Null(next.FirstDeed);
        Assert.Equal("Nothing has been looked at yet: this is only how often each cause is met.", next.Remarks[0]);
        Sound(next);
    }

    [Fact]
    public void All_faults_at_once_are_refused_in_plain_words()
    {
        var next = Cases.Next(Cases.Now([.. Cases.Shipped.Signs.Select(sign => new Sighting(sign.Id, true))]));

        Assert.DoesNotContain(next.Proposals, one => one.IsCane());
        Assert.StartsWith("There is mould", next.Remarks[0], StringComparison.Ordinal);
        Sound(next);
    }

    [Fact]
    public void A_retired_adjustment_is_not_proposed_and_the_next_step_takes_its_place()
    {
        var studio = Assert.IsType<Outcome<Catalogue>.Done>(Cases.Shipped.With(new CatalogueChange.Retire(CatalogueTable.Adjustments, "thin-corners"))).Value;
        var next = Cases.Next(new ReedNow(studio, LikelyCauses.Of(studio, [Cases.Present("tip-corners-thick"), Cases.Present("starts-fuzzy")])) { Checks = FirstChecks.All, Work = [Done(1)] });

        Assert.DoesNotContain("thin-corners", next.Deeds());
        Assert.Contains("thin-edge", next.Deeds());
        Assert.Contains("“thin the tip corners” is no longer used here, and isn’t proposed.", next.Remarks);
        Sound(next);
    }

    /// <summary>Any signs, present and absent and both, sure and unsure, by anybody, with anything known of the reed or nothing.</summary>
    [Fact]
    public void Whatever_comes_in_plain_sentences_come_out_and_to_stop_is_among_them()
    {
        var signs = Cases.Shipped.Signs.Select(sign => sign.Id).Append(new SignId("sings")).Append(default).ToArray();
        var sighting = Gen.Select(Gen.Int[0, signs.Length - 1], Gen.Bool, Gen.Bool, Gen.Enum<Teller>(), Gen.Int[0, 3], (sign, there, sure, by, order) => new Sighting(signs[sign], there, sure, by, order));
        AdjustmentKindId[] kinds = [.. Cases.Shipped.Adjustments.Select(one => one.Id), default, new AdjustmentKindId("polish-it")];
        var work = Gen.Select(Gen.Int[0, kinds.Length - 1], Gen.Int[0, 4], (kind, pass) => new WorkDone(kinds[kind], new Place(Zone.TipSides), pass));
        Gen.Select(sighting.Array[0, 24], work.Array[0, 6], Gen.Enum<Permission>(), Gen.Int[-5, 3000], Gen.Int[0, 90], Gen.Enum<Hand>(), Gen.Bool, Gen.Enum<Zone>()).Sample(
            (seen, done, permission, minutes, length, hand, untested, zone) => Sound(Cases.Next(new ReedNow(Cases.Shipped, LikelyCauses.Of(Cases.Shipped, seen))
            {
                Permission = permission,
                MinutesPlayed = minutes,
                Hand = hand,
                Untested = untested,
                ByComparison = zone,
                Work = done,
                Length = new LengthLeft(length, default, 1, false),
                Floor = ReedLengths.FloorOf(null, null),
                LeftAlone = [new KeptPlace(new Place(zone), "")],
            })),
            iter: 150);
    }

    private static void Sound(NextSteps next)
    {
        Assert.Single(next.Proposals, one => one.Kind == ProposalKind.Stop);
        foreach (var one in next.Proposals)
        {
            Assert.True(double.IsFinite(one.Value) && double.IsFinite(one.Gain) && double.IsFinite(one.Harm));
            Assert.All(one.Words.All, words => Assert.DoesNotContain("NaN", words, StringComparison.Ordinal));
            Assert.False(string.IsNullOrWhiteSpace(one.Words.Do) || string.IsNullOrWhiteSpace(one.Words.HowLittle) || string.IsNullOrWhiteSpace(one.Words.Expect) || string.IsNullOrWhiteSpace(one.Words.MayCost));
        }

        Assert.All(next.Remarks.Concat(next.HeldBack.Select(one => one.Reason)), words => Assert.False(string.IsNullOrWhiteSpace(words)));
    }

    private static WorkDone Done(int pass) => new(Cases.Kind("thin-corners"), new Place(Zone.TipCorners), pass);

    private static LengthLeft Long(decimal millimetres) => new(millimetres, default, 1, IsGuessed: false);
}
