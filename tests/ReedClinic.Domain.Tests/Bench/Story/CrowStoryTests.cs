using CsCheck;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Story;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Pitch;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Bench.Story;

public sealed class CrowStoryTests
{
    private static readonly CrowTarget OnC = CrowTarget.OnC(Tuning.Standard);

    private readonly Writer writer = new();

    private CrowStory Story => CrowStory.Of(writer.Log, OnC);

    [Fact]
    public void A_log_without_a_crow_has_no_story_and_still_a_band_and_an_extent()
    {
        writer.Say(Writer.Test(TestKind.Effort, 2));

        Assert.Empty(Story.Points);
        Assert.Empty(Story.Steps);
        Assert.Null(Story.Sentence);
        Assert.Equal(Range(-30, 30), Story.TargetBand);
        Assert.Equal(Range(-50, 50), Story.Extent);
    }

    [Fact]
    public void The_whole_and_every_step_are_told_in_a_sentence()
    {
        Crow("C -70", 3);
        Do("clip", 0.2m);
        Crow("C -52");
        Do("clip-hair", 0.1m);
        Crow("C -40");
        Do("thin-corners");
        Do("clip", 0.3m);
        Crow("C", 0);

        Assert.Equal("From 70 cents below C to C in three passes", Story.Sentence);
        Assert.Equal(
            ["A clip of 0.2 mm: 18 cents up", "A clip of 0.1 mm: 12 cents up", "Corners and clip 0.3 mm: 40 cents up"],
            Story.Steps.Select(step => step.Sentence));
        Assert.Equal([0, 1, 2, 3], Story.Points.Select(point => point.Pass));
        Assert.Equal(["high only", null, null, "high, then low joins"], Story.Points.Select(point => point.OctaveWord));
        Assert.Equal(DateTimeOffset.UnixEpoch.AddMinutes(1), Story.Points[0].At);
        Assert.Equal(["corners", "clip 0.3 mm"], Story.Steps[2].Work);
        Assert.Equal(Range(-100, 50), Story.Extent);
    }

    [Fact]
    public void What_was_measured_stands_beside_what_was_said_and_on_the_way_only_where_nobody_said_it()
    {
        Crow("C -70", 3);
        Measured("C4 -64");
        Do("clip", 0.2m);
        Measured("C4 -50");
        Do("clip", 0.2m);
        Crow("C");
        Measured("C4 +20");

        Assert.Equal([(0, -70.0, false), (1, -50.0, true), (2, 0.0, false)], Story.Points.Select(point => (point.Pass, point.Cents!.Value.Middle.Value, point.IsMeasured)));
        Assert.Equal([(0, -64.0), (2, 20.0)], Story.Beside.Select(point => (point.Pass, point.Cents!.Value.Middle.Value)));
        Assert.Equal(["A clip of 0.2 mm: 20 cents up", "A clip of 0.2 mm: 50 cents up"], Story.Steps.Select(step => step.Sentence));
        var picture = Domain.Drawings.CrowPicture.Of(Story, OnC)!;
        var rings = Domain.Drawings.CrowSketch.Of(picture, Domain.Drawings.CrowShow.Bench).Parts.OfType<Domain.Drawings.SketchDot>().Count(dot => dot.Ink == Domain.Drawings.SketchInk.Measured);
        Assert.Equal(3, rings);
        Assert.True(Domain.Drawings.CrowSketch.Shown(picture).HasFlag(Domain.Drawings.CrowKeys.Measured));
    }

    [Fact]
    public void Both_blades_and_both_sides_once_are_once_and_the_same_place_again_is_twice()
    {
        Crow("C");
        foreach (var blade in new[] { Blades.Upper, Blades.Lower })
        {
            foreach (var side in new[] { Sides.Left, Sides.Right })
            {
                Do("thin-corners", place: new Place(Zone.TipCorners, blade, side));
                Do("thin-tip-sides", place: new Place(Zone.TipSides, blade, side));
            }
        }

        Do("thin-corners", place: new Place(Zone.TipCorners, Blades.Upper, Sides.Left));
        Do("clip-hair");
        Do("clip", 0.2m, new Place(Zone.TipEdge, Blades.Upper));
        Do("clip", 0.2m, new Place(Zone.TipEdge, Blades.Lower));
        Crow("C -12");

        Assert.Equal(["corners ×2", "tip sides", "clip a hair", "clip 0.2 mm"], Assert.Single(Story.Steps).Work);
        Assert.Equal("Corners ×2, tip sides, clip a hair and clip 0.2 mm: 12 cents down", Story.Steps[0].Sentence);
    }

    [Fact]
    public void A_crow_in_words_alone_is_a_gap_in_the_line_and_the_step_over_it_says_so()
    {
        Crow("C -70");
        Do("thin-corners");
        writer.Say(Writer.Test(TestKind.Crow, 2));
        Do("clip", 0.2m);
        Crow("C -60");
        Do("clip", 0.2m);
        writer.Say(Writer.Test(TestKind.Effort, 2));

        Assert.Equal([true, false, true], Story.Points.Select(point => point.Cents is not null));
        var step = Assert.Single(Story.Steps);
        Assert.Equal((0, 2, true), (step.From, step.To, step.HasGap));
        Assert.Equal(["clip 0.2 mm"], Story.Since);
    }

    [Fact]
    public void A_crow_in_words_alone_is_a_gap_within_one_pass_too()
    {
        Crow("C -70");
        writer.Say(Writer.Test(TestKind.Crow, 2));
        Crow("C -60");

        Assert.True(Assert.Single(Story.Steps).HasGap);
    }

    [Fact]
    public void A_pass_that_was_only_blown_and_not_crowed_is_a_gap_too()
    {
        Crow("C -70");
        Do("thin-corners");
        writer.Say(Writer.Test(TestKind.Effort, 2));
        Do("clip", 0.2m);
        Crow("C -60");

        Assert.True(Assert.Single(Story.Steps).HasGap);
    }

    [Fact]
    public void Work_before_the_first_crow_is_told_apart()
    {
        Do("thin-corners");
        Crow("C");

        Assert.Equal(["corners"], Story.Before);
        Assert.Empty(Story.Steps);
        Assert.Equal("It stood on C", Story.Sentence);
    }

    [Fact]
    public void A_crow_said_later_for_an_earlier_pass_stands_where_it_belongs()
    {
        Crow("C -70");
        var first = Do("thin-corners");
        writer.Say(Writer.Test(TestKind.Effort, 2));
        Do("clip", 0.2m);
        Crow("C -60");
        writer.Say(Pitch("C -90"), pass: new PassId(first.Value));

        Assert.Equal(["Corners: 20 cents down", "A clip of 0.2 mm: 30 cents up"], Story.Steps.Select(step => step.Sentence));
    }

    [Theory]
    [InlineData("C -70", "flat C", "20 to 70 cents up", "From 70 cents below C to a little below C in one pass")]
    [InlineData("C", "flat C", "up to 50 cents down", "From C to a little below C in one pass")]
    [InlineData("C -20", "flat C", "30 cents at most, up or down", "From 20 cents below C to a little below C in one pass")]
    [InlineData("C", "C +1", "1 cent up", "From C to 1 cent above C in one pass")]
    [InlineData("C", "C", "no change", "From C to C in one pass")]
    [InlineData("F -10", "F# +10", "120 cents up", "From 490 cents above C to 590 cents below C in one pass")]
    public void What_is_not_known_to_the_cent_is_told_as_a_range(string before, string after, string change, string whole)
    {
        Crow(before);
        Do("thin-corners");
        Crow(after);

        Assert.Equal("Corners: " + change, Story.Steps[0].Sentence);
        Assert.Equal(whole, Story.Sentence);
    }

    [Fact]
    public void Two_crows_without_work_between_them_are_told_as_such()
    {
        Crow("C");
        Crow("C -5");

        Assert.Equal("Tried again: 5 cents down", Assert.Single(Story.Steps).Sentence);
        Assert.Equal("From C to 5 cents below C without work in between", Story.Sentence);
    }

    [Fact]
    public void Another_tuning_and_another_note_move_the_target()
    {
        Crow("B");

        var target = new CrowTarget(new PitchClass(10), new Tuning(new Hertz(442)));

        Assert.Equal(100 - 7.851, CrowStory.Of(writer.Log, target).Points[0].Cents!.Value.Low.Value, 0.001);
    }

    [Fact]
    public void Own_words_are_kept_short()
    {
        Crow("C");
        writer.Say(Writer.Value(Adjustment.Of(
            AdjustmentKindId.SomethingElse, new Place(Zone.Windows), words: "drew the plaque once along the lower windows, very lightly")));
        Crow("C");

        Assert.Equal(["drew the plaque once along the…"], Story.Steps[0].Work);
    }

    [Fact]
    public void Every_exact_step_adds_up_every_piece_of_work_is_told_and_every_point_lies_in_the_extent() =>
        Gen.Int[-3, 140].List[1, 25].Sample(
            steps =>
            {
                var random = new Writer();
                foreach (var step in steps)
                {
                    // Around the target and away from the place where octaves are folded; below zero it is work.
                    random.Say(step < 0 ? Writer.Work() : Pitch(FormattableString.Invariant($"C {step - 70:+0;-0;+0}")));
                }

                var story = CrowStory.Of(random.Log, OnC);
                var heard = story.Points.Where(point => point.Cents is not null).Select(point => point.Cents!.Value.Low.Value).ToList();
                Assert.Equal(steps.Count(step => step >= 0), story.Points.Count);
                Assert.Equal(Math.Max(0, heard.Count - 1), story.Steps.Count);
                if (heard.Count > 0)
                {
                    Assert.Equal(heard[^1] - heard[0], story.Steps.Sum(step => step.Change.Low.Value), 1e-6);
                }

                Assert.All(heard, cents => Assert.InRange(cents, story.Extent.Low.Value, story.Extent.High.Value));
                Assert.Equal(steps.Exists(step => step < 0), story.Steps.Any(step => step.Work.Count > 0) || story.Before.Count + story.Since.Count > 0);
                Assert.Equal(story.Points.OrderBy(point => point.Sequence), story.Points);
            },
            iter: 2000);

    private static CentsRange Range(double low, double high) => new(new Cents(low), new Cents(high));

    private static Domain.Bench.Test Pitch(string pitch, int? step = null) =>
        Writer.Value(Domain.Bench.Test.Of(TestKind.Crow, step, Writer.Value(SaidPitch.Read(pitch, Tuning.Standard))));

    private void Measured(string pitch) => writer.Say(Writer.Value(Test.Of(
        TestKind.Crow, null, Writer.Value(SaidPitch.Read(pitch, Tuning.Standard)), null, measuredFrom: new(new Guid(1, 2, 3, new byte[8])))));

    private void Crow(string pitch, int? step = null) => writer.Say(Pitch(pitch, step));

    private EntryId Do(string kind, decimal? mm = null, Place? place = null) => writer.Say(Writer.Value(Adjustment.Of(
        new AdjustmentKindId(kind), place ?? new Place(AdjustmentCatalogue.Find(new AdjustmentKindId(kind))!.Zone), new Amount(Millimetres: mm))));
}
