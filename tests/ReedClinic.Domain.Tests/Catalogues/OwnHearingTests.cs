using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Catalogues;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Catalogues;

/// <summary>The studio’s own names within what is said.</summary>
public sealed class OwnHearingTests
{
    private static readonly DateTimeOffset Now = new(2026, 3, 1, 9, 0, 0, TimeSpan.Zero);

    private static readonly OwnKinds Own = StudioCatalogue.Of(
    [
        Made(new StudioEntryWords(StudioEntryKind.Adjustment, "tease the thread up", "It frees the last turn.") { Zone = Zone.Thread, Undo = Reversible.Yes, Caution = "Gently" }),
        Made(new StudioEntryWords(StudioEntryKind.Adjustment, "rub the tip on paper", "It lays fibres down.") { Zone = Zone.TipEdge, Undo = Reversible.No, Caution = "Once" }),
        Made(new StudioEntryWords(StudioEntryKind.Fault, "gapped shoulders", "light between the blades at the shoulders") { Zone = Zone.TipCorners, SeenBy = new TestCardId("look-plaque"), Signs = [new SignId("hisses")], Steps = [new AdjustmentKindId("smooth-bumps")] }),
        Made(new StudioEntryWords(StudioEntryKind.Fault, "shoulders", "the shoulders stand out") { Zone = Zone.HeartSides, SeenBy = new TestCardId("look-plaque"), Signs = [new SignId("hisses")], Steps = [new AdjustmentKindId("smooth-bumps")] }),
    ]).Own;

    [Theory]
    [InlineData("teased the thread up a bit", "tease the thread up", "a bit", null, null)]
    [InlineData("teasing the thread up", "tease the thread up", null, null, null)]
    [InlineData("rubbed the tip on paper, upper blade", "rub the tip on paper", null, null, null)]
    [InlineData("rubbed the tip on paper on the left, two strokes", "rub the tip on paper", null, null, Sides.Left)]
    [InlineData("upper blade: rubbed the tip on paper twice", "rub the tip on paper", null, 2, null)]
    public void Work_of_the_studios_own_is_heard_in_any_tense_with_its_amount_and_its_side(string line, string name, string? words, int? strokes, Sides? sides)
    {
        var work = Assert.IsType<Adjustment>(Own.HearWithin(line)[0].Entry);

        Assert.Equal((name, words, strokes, sides ?? Sides.Both), (Own.NameOf(work.AdjustmentKind), work.AmountWords, work.AmountStrokes, work.Sides));
    }

    [Theory]
    [InlineData("gapped shoulders on the left", "gapped shoulders", Sides.Left, Certainty.Certain)]
    [InlineData("shoulders are gapped", "gapped shoulders", Sides.Both, Certainty.Certain)]
    [InlineData("perhaps gapped shoulders on the right", "gapped shoulders", Sides.Right, Certainty.Suspected)]
    [InlineData("the shoulders stand out", "shoulders", Sides.Both, Certainty.Certain)]
    public void A_fault_of_the_studios_own_is_heard_the_longest_name_first(string line, string name, Sides sides, Certainty certainty)
    {
        var found = Assert.IsType<Finding>(Assert.Single(Own.HearWithin(line)).Entry);

        Assert.Equal((name, sides, certainty), (Own.NameOf(found.FindingKind), found.Sides, found.Certainty));
    }

    [Theory]
    [InlineData("gapped shoulders left", Zone.TipCorners, Blades.Both, Sides.Left)]
    [InlineData("gapped shoulders, upper blade, right", Zone.TipCorners, Blades.Upper, Sides.Right)]
    [InlineData("lower blade, gapped shoulders", Zone.TipCorners, Blades.Lower, Sides.Both)]
    [InlineData("gapped shoulders UB L", Zone.TipCorners, Blades.Upper, Sides.Left)]
    [InlineData("gapped shoulders (upper, right)", Zone.TipCorners, Blades.Upper, Sides.Right)]
    [InlineData("gapped shoulders on the left and on the right", Zone.TipCorners, Blades.Both, Sides.Both)]
    [InlineData("gapped shoulders in the windows, lower blade", Zone.Windows, Blades.Lower, Sides.Both)]
    [InlineData("right then, gapped shoulders", Zone.TipCorners, Blades.Both, Sides.Both)]
    public void A_fault_of_the_studios_own_stands_where_it_was_said_to_be(string line, Zone zone, Blades blades, Sides sides)
    {
        var found = Assert.Single(Own.HearWithin(line).Select(piece => piece.Entry).OfType<Finding>());

        Assert.Equal((zone, blades, sides), (found.Zone, found.Blades, found.Sides));
    }

    [Fact]
    public void A_place_beside_a_shipped_finding_stays_with_it() => Assert.Equal(
        ["gapped shoulders", "upper blade, left corner thick"], Own.HearWithin("gapped shoulders; upper blade, left corner thick").Select(piece => piece.Words));

    [Fact]
    public void What_else_was_said_of_it_is_kept_in_its_words()
    {
        Assert.Equal("gapped shoulders", ((Finding)Own.HearWithin("shoulders are gapped on the left")[0].Entry!).Words);
        Assert.Equal("gapped shoulders: gapped shoulders near the thread", ((Finding)Own.HearWithin("gapped shoulders near the thread")[0].Entry!).Words);
    }

    [Fact]
    public void What_lies_around_it_is_left_to_the_reader_of_phrases_as_it_was_typed() => Assert.Equal(
        ["crow C -15, corners thick", "gapped shoulders on the left", "opening 0,5 too wide"],
        Own.HearWithin("crow C -15, corners thick and gapped shoulders on the left; opening 0,5 too wide").Select(piece => piece.Words));

    [Theory]
    [InlineData("I’ll tease the thread up")]
    [InlineData("I will clip a hair and tease the thread up")]
    [InlineData("tease the thread up?")]
    [InlineData("didn’t tease the thread up")]
    [InlineData("if it leaks, tease the thread up")]
    [InlineData("maybe tease the thread up")]
    [InlineData("the thread is tight")]
    public void What_is_planned_asked_or_denied_was_not_done(string line) =>
        Assert.DoesNotContain(Own.HearWithin(line), piece => piece.Entry is not null);

    [Fact]
    public void One_that_was_looked_for_and_is_not_there_is_heard_among_others() =>
        Assert.IsType<LookedFor>(Own.HearWithin("crow C, no gapped shoulders")[1].Entry);

    private static StudioEntry Made(StudioEntryWords words) =>
        Assert.IsType<Outcome<StudioEntry>.Done>(StudioEntry.Of(new StudioEntryId(Guid.CreateVersion7(Now)), words, [], new AccountId(Guid.CreateVersion7(Now)), Now)).Value;
}
