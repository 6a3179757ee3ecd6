using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Advice;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Reeds;
using static ReedClinic.Domain.Tests.Bench.Advice.AdviceScene;

namespace ReedClinic.Domain.Tests.Bench.Advice;

public sealed class LengthAdviceTests
{
    [Fact]
    public void The_length_that_is_left_is_the_last_one_less_the_clips_since()
    {
        var scene = new AdviceScene();
        Assert.Null(ReedLengths.Left(scene.Writer.Log));
        scene.Do(Clip(0.5m));
        scene.Length(70.0m);
        scene.Do(Clip(0.3m));
        scene.Do(TipSides);

        Assert.Equal((69.7m, false), (ReedLengths.Left(scene.Writer.Log)!.Millimetres, ReedLengths.Left(scene.Writer.Log)!.IsGuessed));

        scene.Do(Hair);
        scene.Do(Clip());

        Assert.Equal((69.15m, true), (ReedLengths.Left(scene.Writer.Log)!.Millimetres, ReedLengths.Left(scene.Writer.Log)!.IsGuessed));
    }

    [Fact]
    public void One_blade_and_then_the_other_make_one_clip()
    {
        var scene = new AdviceScene();
        scene.Length(70.0m);
        scene.Do(Clip(0.3m) with { Place = new Place(Zone.TipEdge, Blades.Upper) });
        scene.Do(Clip(0.3m) with { Place = new Place(Zone.TipEdge, Blades.Lower) });

        Assert.Equal(69.7m, ReedLengths.Left(scene.Writer.Log)!.Millimetres);
    }

    [Theory]
    [InlineData(Instrument.Oboe, ScrapeStyle.LongScrape, 66.2, true)]
    [InlineData(Instrument.Oboe, ScrapeStyle.LongScrape, 66.3, false)]
    [InlineData(Instrument.Oboe, ScrapeStyle.ShortScrape, 70.2, true)]
    [InlineData(Instrument.CorAnglais, ScrapeStyle.LongScrape, 54.2, true)]
    [InlineData(Instrument.CorAnglais, ScrapeStyle.LongScrape, 56.0, false)]
    [InlineData(Instrument.OboeDAmore, ScrapeStyle.LongScrape, 52.0, false)]
    [InlineData(null, null, 66.2, true)]
    public void A_clip_below_the_floor_of_this_instrument_is_spoken_of_before_it_is_made(
        Instrument? instrument, ScrapeStyle? scrape, double length, bool due)
    {
        var scene = new AdviceScene(instrument: instrument, scrape: scrape);
        scene.Length((decimal)length);

        Assert.Equal(due, scene.Due(AdviceKind.LengthFloor, Clip(0.3m)) is not null);
        Assert.Null(scene.Due(AdviceKind.LengthFloor, TipSides));
    }

    [Fact]
    public void A_clip_without_a_size_counts_as_its_usual_size_and_the_line_says_how_much_is_left()
    {
        var scene = new AdviceScene();
        scene.Length(66.3m);
        scene.Do(Hair);

        var line = scene.Due(AdviceKind.LengthFloor, Clip())!;

        Assert.Equal("After this clip about 65.8 mm are left; 66 mm is as short as it should get here.", line.Line);
        Assert.Contains("measure it again", line.Reason, StringComparison.Ordinal);
        Assert.Equal(Evidence.OwnDefault, line.Mark.Evidence);
        Assert.Contains("message 3724", line.Mark.Source, StringComparison.Ordinal);
    }

    [Fact]
    public void A_clip_that_was_recorded_last_is_counted_once()
    {
        var scene = new AdviceScene();
        scene.Length(66.5m);
        scene.Do(Clip(0.3m));
        var work = scene.Writer.Log.Live<Adjustment>().Single();

        Assert.Null(scene.Due(AdviceKind.LengthFloor, PlannedWork.Of(work)));

        scene.Length(66.2m);
        scene.Do(Clip(0.3m));
        Assert.NotNull(scene.Due(AdviceKind.LengthFloor, PlannedWork.Of(scene.Writer.Log.Live<Adjustment>().Last())));
    }

    [Fact]
    public void The_first_clip_on_a_reed_that_nobody_measured_says_so_once()
    {
        var scene = new AdviceScene();
        Assert.NotNull(scene.Due(AdviceKind.LengthNotMeasured, Hair));

        scene.Do(Hair);

        Assert.Null(scene.Due(AdviceKind.LengthNotMeasured, Hair));
    }

    // Clamped beam of even thickness: the frequency goes with 1 ÷ L² (standard theory of vibrating bars). A 23 mm blade
    // shortened by 0.1, 0.5 and 1.0 mm rises by 15.1, 76.1 and 153.9 cents (worked out by hand from 1200·log₂).
    [Theory]
    [InlineData(0.1, 15.1)]
    [InlineData(0.5, 76.1)]
    [InlineData(1.0, 153.9)]
    public void A_beam_rises_as_theory_says(double clip, double cents) =>
        Assert.Equal(cents, ClipEffect.BeamCents(ClipEffect.FreeCane, clip), 0.05);

    [Fact]
    public void A_fall_of_more_than_a_semitone_is_ordinary_as_long_as_length_is_left()
    {
        var scene = new AdviceScene();
        scene.Found("tip-thick");
        scene.Length(70m);
        scene.Crow("C +20");
        scene.Do(Plan("thin-whole-tip", Zone.TipSides));
        scene.Crow("Bb");

        Assert.Empty(scene.Due());
    }

    [Fact]
    public void A_fall_that_the_length_left_cannot_win_back_is_told()
    {
        var scene = new AdviceScene();
        scene.Length(66.4m);
        scene.Crow("C +20");
        scene.Do(TipSides);
        scene.Crow("Bb -20");

        var line = scene.Due(AdviceKind.FallNotWonBack)!;

        Assert.Equal("The crow has fallen to 220 cents below C; the 0.4 mm that may still go win back about 60 cents.", line.Line);
        Assert.Equal(Evidence.Calculated, line.Mark.Evidence);
    }

    [Fact]
    public void Where_no_length_is_left_the_line_says_so_and_counts_nothing()
    {
        var scene = new AdviceScene();
        scene.Length(66m);
        scene.Crow("C +20");
        scene.Do(TipSides);
        scene.Crow("B -40");

        Assert.Equal("The crow has fallen to 140 cents below C: no length is left to win it back.", scene.Due(AdviceKind.FallNotWonBack)!.Line);
    }

    [Fact]
    public void Once_the_work_stops_nothing_is_said_for_a_next_step_that_nobody_plans()
    {
        var scene = new AdviceScene();
        scene.Length(66m);
        scene.Crow("C +20");
        scene.Do(TipSides);
        scene.Effort(0);
        scene.Crow("B -40");
        Assert.NotNull(scene.Due(AdviceKind.FallNotWonBack));

        scene.Say(Writer.Value(Stopped.Of()));

        Assert.Empty(scene.Due());
        Assert.NotNull(scene.Due(AdviceKind.FallNotWonBack, TipSides));
    }

    [Fact]
    public void What_is_left_is_never_rounded_up_to_the_floor_that_it_is_below()
    {
        var scene = new AdviceScene();
        scene.Length(66.1m);

        Assert.Equal("After this clip about 65.95 mm are left; 66 mm is as short as it should get here.", scene.Due(AdviceKind.LengthFloor, Clip(0.15m))!.Line);
    }

    [Fact]
    public void What_was_done_last_is_spoken_of_until_it_is_tried_and_the_latest_crow_counts_at_once()
    {
        var scene = new AdviceScene();
        scene.Length(66m);
        scene.Crow("C +20");
        scene.Do(TipSides);
        Assert.Equal(TipSides.Kind, PlannedWork.Untried(scene.Writer.Log)!.Kind);

        scene.Crow("B -40");

        Assert.Null(PlannedWork.Untried(scene.Writer.Log));
        Assert.Contains("140 cents below C", scene.Due(AdviceKind.FallNotWonBack, PlannedWork.Untried(scene.Writer.Log))!.Line, StringComparison.Ordinal);
    }

    [Fact]
    public void What_a_clip_does_at_this_bench_counts_before_what_is_worked_out()
    {
        var scene = new AdviceScene();
        scene.Length(67.4m);
        scene.Crow("C");
        scene.Do(TipSides);
        scene.Crow("B");
        Assert.Null(scene.Due(AdviceKind.FallNotWonBack));

        var ours = new ClipEffect(4, EvidenceMark.OwnDefault);

        Assert.Contains(scene.Due(null, ours), line => line.Kind == AdviceKind.FallNotWonBack && line.Mark == EvidenceMark.OwnDefault);
    }

    [Fact]
    public void A_reed_that_came_flat_has_not_fallen_here_and_without_a_length_nothing_is_guessed()
    {
        var scene = new AdviceScene();
        scene.Crow("Bb");
        scene.Length(66.1m);
        Assert.Null(scene.Due(AdviceKind.FallNotWonBack));

        var unmeasured = new AdviceScene();
        unmeasured.Crow("C");
        unmeasured.Do(TipSides);
        unmeasured.Crow("Bb");
        Assert.Null(unmeasured.Due(AdviceKind.FallNotWonBack));
    }

    [Fact]
    public void For_a_cor_anglais_nobody_knows_what_a_clip_wins_back_so_nothing_is_said_until_the_studio_does()
    {
        var scene = new AdviceScene(instrument: Instrument.CorAnglais);
        scene.Length(54.2m);
        scene.Crow("C");
        scene.Do(TipSides);
        scene.Crow("Bb");

        Assert.Null(scene.Due(AdviceKind.FallNotWonBack));
    }
}
