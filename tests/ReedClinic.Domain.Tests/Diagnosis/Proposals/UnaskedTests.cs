using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Catalogues;
using ReedClinic.Domain.Diagnosis.Proposals;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Pitch;
using ReedClinic.Domain.Reeds;
using ReedClinic.Domain.Tests.Bench;
using ReedClinic.Domain.Tests.Bench.Advice;

namespace ReedClinic.Domain.Tests.Diagnosis.Proposals;

/// <summary>What may be proposed unasked, and how: ten rules. All of them are common practice or this program’s own.</summary>
public sealed class UnaskedTests
{
    [Fact]
    public void Every_number_in_a_proposal_is_among_its_numbers_with_its_mark()
    {
        var random = new Random(7);
        foreach (var proposal in Cases.Shipped.Causes.SelectMany(cause => Cases.Next(Cases.Now(Cases.Spoilt(cause, random)) with { Length = new LengthLeft(70.5m, default, 1, false), Floor = ReedLengths.FloorOf(null, null) }).Proposals))
        {
            Assert.NotEmpty(proposal.Numbers);
            Assert.All(proposal.Numbers, number => Assert.False(string.IsNullOrWhiteSpace(number.Footing)));
            foreach (var number in proposal.Words.All.SelectMany(Digits))
            {
                Assert.Contains(proposal.Numbers, known => Digits(known.What).Contains(number));
            }
        }
    }

    [Fact]
    public void What_has_no_source_is_usual_teaching_and_never_a_fact_with_a_citation()
    {
        Assert.Equal("usual teaching", new KnownNumber("risk: 3 of 5", EvidenceMark.CommonPractice).Footing);
        Assert.Equal("usual teaching", new KnownNumber("risk: 3 of 5", EvidenceMark.OwnDefault).Footing);
        Assert.Equal("oboeinsight.com, adjustments and fixes", new KnownNumber("pitch", EvidenceMark.Published("oboeinsight.com, adjustments and fixes")).Footing);
        var clip = Cases.Next("crow-low", "whole-flat", "tip-long").Of("clip-hair")!;
        Assert.Equal("usual teaching", clip.Numbers.Single(number => number.What.StartsWith("how much", StringComparison.Ordinal)).Footing);
        Assert.Contains("oboeinsight.com, adjustments and fixes", clip.Sources);
    }

    [Fact]
    public void Effects_are_ranges_and_what_a_studio_learns_takes_their_place_with_its_number_of_passes()
    {
        var now = Cases.With("tip-corners-thick", "starts-fuzzy", "soft-fails", "crow-high");
        var learned = EffectEstimate.OfCents(-34, -22, -9, new EvidenceMark(Evidence.Calculated, "from this bench’s own passes"), 14);
        var here = Cases.Next(now with { Effects = AdjustmentEffects.Usual.With(Cases.Kind("thin-corners"), EffectScale.Pitch, learned) }).Of("thin-corners")!;

        Assert.Contains("about −22 cents a pass here, from 14 passes".Replace("−", "-", StringComparison.Ordinal), here.Words.Expect.Replace("−", "-", StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.Contains(here.Numbers, number => number.Mark.Source == "from this bench’s own passes");
        Assert.NotEqual(Cases.Next(now).Of("thin-corners")!.Value, here.Value);
        Assert.Equal(new EffectEstimate(-1, -0.5, 0, Cases.Shipped.Find(Cases.Kind("thin-corners"))!.Effects[EffectScale.Pitch].Mark), AdjustmentEffects.Usual.Of(Cases.Shipped.Find(Cases.Kind("thin-corners"))!, EffectScale.Pitch));
    }

    [Fact]
    public void What_cannot_be_counted_with_is_not_learned()
    {
        var mark = EvidenceMark.OwnDefault;

        Assert.Same(AdjustmentEffects.Usual, AdjustmentEffects.Usual.With(Cases.Kind("blend"), EffectScale.Pitch, new EffectEstimate(double.NaN, 0, 1, mark)));
        Assert.Same(AdjustmentEffects.Usual, AdjustmentEffects.Usual.With(Cases.Kind("blend"), EffectScale.Pitch, new EffectEstimate(1, 0, 2, mark)));
        Assert.Same(AdjustmentEffects.Usual, AdjustmentEffects.Usual.With(default, EffectScale.Pitch, new EffectEstimate(0, 0, 1, mark)));
    }

    [Fact]
    public void The_note_counts_before_its_octave_and_the_octave_before_cents()
    {
        string[] Deeds(string crow)
        {
            var scene = new AdviceScene();
            scene.Found("tip-thick");
            scene.Crow(crow);
            return [.. Cases.Next(ReedReading.Of(Cases.Shipped, scene.Writer.Log, scene.Reed, scene.Batch)).Deeds().Select(deed => deed!)];
        }

        Assert.Equal(Deeds("B4"), Deeds("B5"));
        Assert.Equal(Deeds("C5"), Deeds("C6"));
        Assert.NotEqual(Deeds("B4"), Deeds("C#5"));
    }

    [Theory]
    [InlineData("thin-tip-centre")]
    [InlineData("dust-heart")]
    [InlineData("thin-spine")]
    [InlineData("thin-rails")]
    [InlineData("narrow-edges")]
    [InlineData("retie")]
    public void What_is_an_adjusters_own_choice_is_not_proposed_unasked(string id)
    {
        var entry = Cases.Shipped.Find(Cases.Kind(id))!;

        Assert.Contains("own choice", Bars.Of(Cases.With("heart-thick"), entry)!.Reason, StringComparison.Ordinal);
        Assert.All(Cases.Shipped.Causes, cause => Assert.DoesNotContain(id, Cases.Next([.. Cases.Own(cause).Select(sign => sign.Value)]).Deeds()));
    }

    [Theory]
    [InlineData("clip-hair")]
    [InlineData("clip")]
    [InlineData("square-tip")]
    public void A_sharp_crow_is_not_clipped(string id)
    {
        var now = Cases.With("tip-long", "tip-thin") with { Crow = new CentsRange(new Cents(60), new Cents(60)) };

        Assert.Contains("sharp", Bars.Of(now, Cases.Shipped.Find(Cases.Kind(id))!)!.Reason, StringComparison.Ordinal);
        Assert.Null(Bars.Of(now with { Crow = new CentsRange(new Cents(-60), new Cents(-60)) }, Cases.Shipped.Find(Cases.Kind(id))!));
    }

    [Fact]
    public void A_flat_and_easy_reed_is_not_scraped()
    {
        var next = Cases.Next(Cases.With("crow-low", "whole-flat", "feels-easy", "swell-wild") with { Crow = new CentsRange(new Cents(-60), new Cents(-60)) });

        Assert.DoesNotContain(next.Deeds(), deed => deed is "take-heart-sides" or "thin-tip-sides" or "open-windows" or "blend");
        Assert.Contains("clip-hair", next.Deeds());
    }

    [Fact]
    public void Of_a_flat_and_hard_reed_the_closing_is_looked_at_first_and_then_its_sides_may_be_taken()
    {
        Assert.Contains("closing-order", Cases.Next("crow-low", "whole-flat", "feels-hard", "needs-biting").Tests());
        var closing = Cases.Next("crow-low", "whole-flat", "feels-hard", "centre-closes-first");
        Assert.DoesNotContain("closing-order", closing.Tests());
        Assert.Contains("take-heart-sides", closing.Deeds());
    }

    [Fact]
    public void Before_two_measurements_are_compared_it_is_asked_what_they_need_to_share()
    {
        var worked = Cases.With("tip-thick") with { Work = [new WorkDone(Cases.Kind("thin-corners"), new Place(Zone.TipCorners), 1)] };
        string? Asked(ReedNow now) => Cases.Next(now).Remarks.FirstOrDefault(remark => remark.StartsWith("Before two measurements", StringComparison.Ordinal));

        Assert.Equal("Before two measurements are compared, note beside them: how long it was in water, how high above the sea, how warm the room was, how long it has been played.", Asked(worked));
        Assert.Null(Asked(worked with { Circumstances = new Circumstances(4, 12, 20), MinutesPlayed = 200 }));
        Assert.Null(Asked(Cases.With("tip-thick")));
    }

    [Fact]
    public void A_lesson_has_one_test_one_thing_that_can_be_undone_and_when_to_ask()
    {
        foreach (var cause in Cases.Shipped.Causes)
        {
            var start = LessonStart.Of(Cases.Shipped, cause.Id)!;

            Assert.Contains("ask a teacher", start.AskWhen, StringComparison.Ordinal);
            Assert.True(start.TryFirst is null || (start.TryFirst.Undo != Reversible.No && !cause.NeverFirst.Contains(start.TryFirst.Id)), cause.Id.Value);
        }

        Assert.Equal(("closing-order", "wait"), (LessonStart.Of(Cases.Shipped, new CauseId("centre-closes-first"))!.Test.Id.Value, LessonStart.Of(Cases.Shipped, new CauseId("too-open"))!.TryFirst!.Id.Value));
        Assert.Null(LessonStart.Of(Cases.Shipped, new CauseId("nothing-of-the-sort")));
    }

    [Fact]
    public void A_younger_student_gets_no_work_with_a_knife_before_guardian_and_teacher_agree()
    {
        var young = Cases.With("tip-corners-thick", "starts-fuzzy", "soft-fails") with { Hand = Hand.YoungerStudent };

        Assert.DoesNotContain(Cases.Next(young).Proposals, one => one.IsCane());
        Assert.Contains("guardian and teacher", Cases.Next(young).WhyNot("thin-corners"), StringComparison.Ordinal);
        Assert.Contains(Cases.Next(young with { KnifeAgreed = true }).Proposals, one => one.IsCane());
        Assert.Contains(Cases.Next(young with { Hand = Hand.Student }).Proposals, one => one.IsCane());
    }

    [Theory]
    [InlineData("mould-seen", "mould")]
    [InlineData("body-cracked", "split")]
    [InlineData("rails-cut", "rails")]
    [InlineData("tip-corner-broken", "corner")]
    public void Mould_cracks_cut_rails_and_missing_corners_are_refused_with_a_reason(string sign, string word)
    {
        var next = Cases.Next(sign, "tip-thick", "starts-late", "tongue-thuds");

        Assert.DoesNotContain(next.Proposals, one => one.IsCane());
        Assert.Contains(word, next.Remarks[0], StringComparison.Ordinal);
    }

    [Fact]
    public void Nothing_is_done_to_a_reed_with_mould_that_is_damp_or_that_is_not_here()
    {
        foreach (var now in new[] { Cases.With("dry", "smells") with { Fitness = Fitness.Mould }, Cases.With("dry") with { Fitness = Fitness.DryFirst }, Cases.With("dry") with { IsHere = false } })
        {
            Assert.Empty(Cases.Next(now).Deeds().Except(["retire"]));
        }

        Assert.Equal("retire", Cases.Next(Cases.With("mould-seen")).FirstDeed!.Adjustment!.Value.Value);
    }

    [Fact]
    public void Instrument_and_player_stand_in_front_of_every_remedy()
    {
        foreach (var cause in Cases.Shipped.Causes)
        {
            var next = Cases.Next(Cases.Now([.. Cases.Own(cause).Select(sign => Cases.Present(sign.Value))]) with { Checks = new FirstChecks(Wet: true, Sealed: true, Instrument: false, Player: false) });
            var deed = next.Proposals.ToList().FindIndex(one => one.Kind is ProposalKind.Undoable or ProposalKind.Cane);

            Assert.True(deed < 0 || next.Tests().Take(2).SequenceEqual(["another-reed", "another-player"]), cause.Id.Value);
        }
    }

    [Fact]
    public void What_is_played_at_the_bench_is_played_by_another_on_another_instrument()
    {
        var scene = new AdviceScene();
        Assert.Equal(default, ReedReading.Of(Cases.Shipped, scene.Writer.Log, scene.Reed, scene.Batch).Checks);
        scene.Effort(3);
        Assert.Equal(new FirstChecks(Wet: true, Sealed: false, Instrument: true, Player: true), ReedReading.Of(Cases.Shipped, scene.Writer.Log, scene.Reed, scene.Batch).Checks);
        scene.Say(Writer.Test(TestKind.Seal, 3));
        Assert.Equal(FirstChecks.All, ReedReading.Of(Cases.Shipped, scene.Writer.Log, scene.Reed, scene.Batch).Checks);
    }

    private static IEnumerable<string> Digits(string words) =>
        System.Text.RegularExpressions.Regex.Matches(words, @"\d+(\.\d+)?").Select(match => match.Value);
}
