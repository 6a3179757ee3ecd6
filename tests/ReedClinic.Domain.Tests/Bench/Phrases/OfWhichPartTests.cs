using ReedClinic.Domain.Bench.Phrases;

namespace ReedClinic.Domain.Tests.Bench.Phrases;

/// <summary>Of which part something is, what is no part at all, and what wasn’t worked on: each is read whole.</summary>
public sealed class OfWhichPartTests
{
    [Theory]
    [InlineData("slipped and scored the cane behind the tip", "finding kind=something-else character=Fault zone=Transition arose=CausedByTheWork")]
    [InlineData("the knife slipped and scored a line behind the tip", "finding kind=something-else character=Fault zone=Transition arose=CausedByTheWork")]
    [InlineData("knife slipped, scored the back on the upper blade", "finding kind=something-else character=Fault zone=Windows blades=Upper arose=CausedByTheWork")]
    [InlineData("slipped and nicked the edge", "finding kind=something-else character=Fault zone=TipEdge arose=CausedByTheWork")]
    [InlineData("gouged it behind the tip", "finding kind=something-else character=Fault zone=Transition arose=CausedByTheWork")]
    [InlineData("there's a score line behind the tip", "finding kind=something-else character=Fault zone=Transition")]
    [InlineData("I've scored the spine", "finding kind=something-else character=Fault zone=Spine arose=CausedByTheWork")]
    [InlineData("the student's knife slipped and nicked the edge", "finding kind=something-else character=Fault zone=TipEdge")]
    [InlineData("dug in behind the tip, a nick there", "note")]
    [InlineData("I slipped and cut into the left rail", "finding kind=rails-cut character=Fault zone=Rails sides=Left arose=CausedByTheWork")]
    [InlineData("knife slipped and tore the edge", "finding kind=tip-edge-ragged character=Fault zone=TipEdge arose=CausedByTheWork")]
    [InlineData("the edge is ragged", "finding kind=tip-edge-ragged character=Fault zone=TipEdge")]
    [InlineData("the blades slipped too far", "finding kind=slipped-too-far character=Fault zone=SideEdges")]
    public void A_slip_left_its_mark_where_it_is_said(string phrase, string read) => Assert.Equal(read, Read(phrase));

    [Theory]
    [InlineData("middle register rings nicely", "note")]
    [InlineData("middle register is lovely", "note")]
    [InlineData("the middle register speaks well", "note")]
    [InlineData("middle notes are clear", "note")]
    [InlineData("D major scale is even", "note")]
    [InlineData("the scale comes out even", "note")]
    [InlineData("registers are even", "note")]
    [InlineData("scales are smooth and even", "note")]
    [InlineData("the middle closes first", "finding kind=centre-closes-first character=Fault zone=Opening")]
    [InlineData("upper register rings", "test test=HighSteadiness step=holds")]
    [InlineData("slope even", "finding kind=blend-smooth character=Strength zone=Transition")]
    [InlineData("opening is even", "finding kind=opening-even character=Strength zone=Opening")]
    public void How_notes_sound_is_of_no_part(string phrase, string read) => Assert.Equal(read, Read(phrase));

    [Theory]
    [InlineData("tip is even, both blades", "finding kind=quadrants-matched character=Strength zone=TipSides")]
    [InlineData("the tip's even on both blades", "finding kind=quadrants-matched character=Strength zone=TipSides")]
    [InlineData("the light through the tip is even", "finding kind=quadrants-matched character=Strength zone=TipSides")]
    [InlineData("the two blades are even", "finding kind=quadrants-matched character=Strength zone=WholeReed")]
    [InlineData("the heart is even on the left", "finding kind=quadrants-matched character=Strength zone=HeartCentre sides=Left")]
    [InlineData("tip isn't even on both blades", "finding kind=tip-thick character=Fault zone=TipSides")]
    [InlineData("tip is even thicker on the left", "finding kind=tip-thick character=Fault zone=TipSides sides=Left")]
    [InlineData("windows even", "finding kind=quadrants-matched character=Strength zone=Windows")]
    public void What_is_even_is_the_part_that_is_named(string phrase, string read) => Assert.Equal(read, Read(phrase));

    [Theory]
    [InlineData("never touched the spine", "note")]
    [InlineData("I never touched the rails", "note")]
    [InlineData("kept off the heart", "leavealone zone=HeartCentre")]
    [InlineData("kept well away from the spine", "leavealone zone=Spine")]
    [InlineData("kept off the left corner", "leavealone zone=TipCorners sides=Left")]
    [InlineData("nothing done to the spine", "note")]
    [InlineData("the knife slipped but left no mark", "note")]
    [InlineData("gave up on the heart", "note")]
    [InlineData("I've given up on the corners", "note")]
    [InlineData("gave up on the tip", "note")]
    [InlineData("gave up on this reed", "verdict verdict=NotToBeSaved")]
    [InlineData("gave the corners two strokes", "adjustment kind=thin-corners zone=TipCorners strokes=2")]
    [InlineData("the spine was never touched", "finding kind=spine-intact character=Strength zone=Spine")]
    [InlineData("spine untouched", "finding kind=spine-intact character=Strength zone=Spine")]
    [InlineData("nothing done to it", "verdict verdict=LeftAsItCame")]
    public void What_was_not_worked_on(string phrase, string read) => Assert.Equal(read, Read(phrase));

    [Theory]
    [InlineData("heart thick, left side", "finding kind=heart-sides-thick character=Fault zone=HeartSides sides=Left")]
    [InlineData("the heart's too thick, right side", "finding kind=heart-sides-thick character=Fault zone=HeartSides sides=Right")]
    [InlineData("heart too thick, left side of the lower blade", "finding kind=heart-sides-thick character=Fault zone=HeartSides blades=Lower sides=Left")]
    [InlineData("bark split", "finding kind=something-else character=Fault zone=Bark")]
    [InlineData("the bark's split", "finding kind=something-else character=Fault zone=Bark")]
    [InlineData("split bark on the upper", "finding kind=something-else character=Fault zone=Bark blades=Upper")]
    [InlineData("reed's too long", "finding kind=something-else character=Fault zone=WholeReed")]
    [InlineData("it's too long", "finding kind=something-else character=Fault zone=WholeReed")]
    [InlineData("gouge is thick in the middle", "finding kind=something-else character=Fault zone=WholeReed")]
    [InlineData("the gouge is thin at the sides", "finding kind=something-else character=Fault zone=WholeReed")]
    [InlineData("gouge too thick", "finding kind=something-else character=Fault zone=WholeReed")]
    [InlineData("the mouth is completely shut", "test test=Opening step=closed")]
    [InlineData("dark and round", "note")]
    [InlineData("warm and round", "note")]
    [InlineData("heart thick, upper blade", "finding kind=heart-thick character=Fault zone=HeartCentre blades=Upper")]
    [InlineData("crack in the heart", "finding kind=body-cracked character=Fault zone=HeartCentre")]
    [InlineData("heart's too long", "finding kind=heart-length character=Fault zone=HeartBottom")]
    [InlineData("the mouth shuts when I play", "finding kind=closes-in-play character=Fault zone=Opening")]
    [InlineData("rounded the eye", "adjustment kind=round-eye zone=Eye")]
    public void Of_which_part_it_is(string phrase, string read) => Assert.Equal(read, Read(phrase));

    [Theory]
    [InlineData("leave the back alone", true)]
    [InlineData("left the back alone", true)]
    [InlineData("don't touch the back", true)]
    [InlineData("keep off the back", true)]
    [InlineData("no need to touch the back", true)]
    [InlineData("leave the windows alone", false)]
    [InlineData("leave the back windows alone", false)]
    [InlineData("left both windows alone", false)]
    public void A_back_is_asked_about_and_a_window_is_not(string phrase, bool asked)
    {
        var read = Assert.Single(PhraseReader.Read(phrase, PhraseCorpus.Context([])).Entries);

        Assert.Equal(("leavealone zone=Windows", asked), (PhraseCorpus.LineOf(read).ToString(), read.Doubts.Any(doubt => doubt.Slot is "zone")));
    }

    private static string Read(string phrase) => string.Join(" | ", PhraseReader.Read(phrase, PhraseCorpus.Context([])).Entries.Select(PhraseCorpus.LineOf));
}
