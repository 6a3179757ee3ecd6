using ReedClinic.Domain.Bench.Phrases;

namespace ReedClinic.Domain.Tests.Bench.Phrases;

/// <summary>What puts right a side, spares the spine, bounds the work or names a fingered note is heard as that, whatever stands before it.</summary>
public sealed class SaidInsteadTests
{
    [Theory]
    [InlineData("two strokes off the left window, oops, the right", "adjustment kind=open-windows zone=Windows sides=Right strokes=2")]
    [InlineData("left shoulder too thick, sorry, the right one", "finding kind=heart-sides-thick character=Fault zone=HeartSides sides=Right")]
    [InlineData("one stroke off the right corner of the lower, sorry, the left one", "adjustment kind=thin-corners zone=TipCorners blades=Lower sides=Left strokes=1")]
    [InlineData("lightened the left rail, sorry, the right rail", "adjustment kind=thin-rails zone=Rails sides=Right")]
    [InlineData("lightened the right rail by 0.02 mm, no, the left rail", "adjustment kind=thin-rails zone=Rails sides=Left mm=0.02")]
    [InlineData("took a hair off the left wing, sorry, the right one", "adjustment kind=thin-tip-sides zone=TipSides sides=Right words=\"a hair\"")]
    [InlineData("took one off the left corner, sorry, the right one, crow C", "adjustment kind=thin-corners zone=TipCorners sides=Right strokes=1 | test test=Crow pitch=C")]
    [InlineData("took one off the left corner, crow C", "adjustment kind=thin-corners zone=TipCorners sides=Left strokes=1 | test test=Crow pitch=C")]
    [InlineData("took one off the left corner, effort is right", "adjustment kind=thin-corners zone=TipCorners sides=Left strokes=1 | test test=Effort step=right")]
    [InlineData("took one off the left corner, then one off the right one", "adjustment kind=thin-corners zone=TipCorners strokes=1")]
    [InlineData("just right", "test test=Effort step=right")]
    public void A_side_that_is_put_right_is_no_effort(string phrase, string read) => Assert.Equal(read, Read(phrase, "effort high"));

    [Theory]
    [InlineData("scraped the back either side of the spine, three strokes", "adjustment kind=open-windows zone=Windows strokes=3")]
    [InlineData("two strokes either side of the spine", "adjustment kind=open-windows zone=Windows strokes=2")]
    [InlineData("thinned the back each side of the spine, four strokes", "adjustment kind=open-windows zone=Windows strokes=4")]
    [InlineData("two strokes off the left side of the spine", "adjustment kind=open-windows zone=Windows sides=Left strokes=2")]
    [InlineData("took two strokes off next to the spine on the lower", "adjustment kind=open-windows zone=Windows blades=Lower strokes=2")]
    [InlineData("two strokes off both sides of the spine, upper", "adjustment kind=open-windows zone=Windows blades=Upper strokes=2")]
    [InlineData("too thick either side of the spine", "finding kind=back-thick character=Fault zone=Windows")]
    [InlineData("two strokes off the spine", "adjustment kind=thin-spine zone=Spine strokes=2")]
    [InlineData("spine is intact", "finding kind=spine-intact character=Strength zone=Spine")]
    [InlineData("not touching the spine", "leavealone zone=Spine")]
    [InlineData("scraped the windows beside the spine", "adjustment kind=open-windows zone=Windows")]
    public void What_lies_beside_the_spine_is_none_of_it(string phrase, string read) => Assert.Equal(read, Read(phrase));

    [Theory]
    [InlineData("no more than that", "note")]
    [InlineData("not more than that", "note")]
    [InlineData("dusted the heart, two strokes, no more than that", "adjustment kind=dust-heart zone=HeartCentre strokes=2")]
    [InlineData("two strokes off the heart and no more", "adjustment kind=dust-heart zone=HeartCentre strokes=2")]
    [InlineData("one stroke off the left corner, no more than that", "adjustment kind=thin-corners zone=TipCorners sides=Left strokes=1")]
    [InlineData("no more chip", "ended kind=tip-cracked ending=Gone")]
    [InlineData("the chip is gone", "ended kind=tip-cracked ending=Gone")]
    [InlineData("chip no longer there", "ended kind=tip-cracked ending=Gone")]
    public void How_much_it_was_ends_nothing(string phrase, string read) => Assert.Equal(read, Read(phrase, "small chip in the tip"));

    [Theory]
    [InlineData("half-holed D is slow", "note")]
    [InlineData("half-hole E is dull", "note")]
    [InlineData("octave on C is narrow, 15 cents", "note")]
    [InlineData("octave D is wide", "note")]
    [InlineData("half-holed C sharp is stuffy", "note")]
    [InlineData("crow again, C just about in tune", "test test=Crow pitch=C")]
    [InlineData("crow C, in tune, single", "test test=Crow pitch=C")]
    [InlineData("crow once more, B nearly in tune", "test test=Crow pitch=B")]
    [InlineData("peep C, in tune", "test test=Peep pitch=C")]
    [InlineData("crow is B flat, in tune", "test test=Crow pitch=Bb")]
    [InlineData("crow C, A in tune", "test test=Crow pitch=C | test test=TuningNote step=\"in tune\"")]
    [InlineData("crow B, plays in tune", "test test=Crow pitch=B | test test=TuningNote step=\"in tune\"")]
    [InlineData("in tune", "test test=TuningNote step=\"in tune\"")]
    [InlineData("crow D", "test test=Crow pitch=D")]
    public void A_fingered_note_is_no_crow(string phrase, string read) => Assert.Equal(read, Read(phrase, "crow C"));

    private static string Read(string phrase, params string[] before) => string.Join(" | ", PhraseReader.Read(phrase, PhraseCorpus.Context(before)).Entries.Select(PhraseCorpus.LineOf));
}
