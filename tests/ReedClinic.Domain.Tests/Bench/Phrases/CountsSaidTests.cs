using ReedClinic.Domain.Bench.Phrases;

namespace ReedClinic.Domain.Tests.Bench.Phrases;

/// <summary>How much was done, how wide, and with what else; and which value a note was given: each is read whole.</summary>
public sealed class CountsSaidTests
{
    [Theory]
    [InlineData("clipped a millimetre and a half", "adjustment kind=clip zone=TipEdge mm=1.5")]
    [InlineData("clipped one and a half millimetres", "adjustment kind=clip zone=TipEdge mm=1.5")]
    [InlineData("clipped two and a half tenths", "adjustment kind=clip-hair zone=TipEdge mm=0.25")]
    [InlineData("clipped a tenth and a half", "adjustment kind=clip-hair zone=TipEdge mm=0.15")]
    [InlineData("clipped 1 and a half mm", "adjustment kind=clip zone=TipEdge mm=1.5")]
    [InlineData("clipped a millimetre and a quarter", "adjustment kind=clip zone=TipEdge mm=1.25")]
    [InlineData("clipped half a millimetre", "adjustment kind=clip zone=TipEdge mm=0.5")]
    [InlineData("clipped a millimetre", "adjustment kind=clip zone=TipEdge mm=1")]
    [InlineData("clipped two tenths and squared it", "adjustment kind=clip-hair zone=TipEdge mm=0.2 | adjustment kind=square-tip zone=TipEdge")]
    [InlineData("two dusting strokes", "adjustment kind=dust-heart zone=HeartCentre strokes=2")]
    [InlineData("two dusting strokes on the heart", "adjustment kind=dust-heart zone=HeartCentre strokes=2")]
    [InlineData("three dusting strokes on the tip", "adjustment kind=thin-whole-tip zone=TipSides strokes=3")]
    [InlineData("one dusting stroke", "adjustment kind=dust-heart zone=HeartCentre strokes=1")]
    [InlineData("two blending strokes", "adjustment kind=blend zone=Transition strokes=2")]
    [InlineData("a few dusting strokes", "adjustment kind=dust-heart zone=HeartCentre words=\"a few\"")]
    [InlineData("two or three dusting strokes on the heart", "adjustment kind=dust-heart zone=HeartCentre")]
    [InlineData("wings: two left, one right", "adjustment kind=thin-tip-sides zone=TipSides sides=Left strokes=2 | adjustment kind=thin-tip-sides zone=TipSides sides=Right strokes=1")]
    [InlineData("corners: two left, one right", "adjustment kind=thin-corners zone=TipCorners sides=Left strokes=2 | adjustment kind=thin-corners zone=TipCorners sides=Right strokes=1")]
    [InlineData("two left, one right", "note")]
    public void How_much_it_was(string phrase, string read) => Assert.Equal(read, Read(phrase));

    [Theory]
    [InlineData("thinned it right across", "tip too thick", "adjustment kind=thin-whole-tip zone=TipSides")]
    [InlineData("scraped it right across", "two strokes off the left corner", "adjustment kind=thin-whole-tip zone=TipSides")]
    [InlineData("scraped it right across", "left shoulder too thick", "adjustment kind=dust-heart zone=HeartCentre")]
    [InlineData("scraped it straight across", "two strokes off the left corner", "adjustment kind=thin-whole-tip zone=TipSides")]
    [InlineData("thinned it right across", "two strokes off the heart", "adjustment kind=dust-heart zone=HeartCentre")]
    [InlineData("right corner, one stroke across", "crow C", "adjustment kind=thin-corners zone=TipCorners sides=Right strokes=1")]
    [InlineData("took one right off the left corner", "crow C", "adjustment kind=thin-corners zone=TipCorners sides=Left strokes=1")]
    public void Right_across_is_the_whole_width(string phrase, string before, string read) => Assert.Equal(read, Read(phrase, before));

    [Theory]
    [InlineData("two strokes off the lower tip to even it up", "adjustment kind=even-up zone=TipSides blades=Lower strokes=2")]
    [InlineData("one stroke off the lower tip to level it", "adjustment kind=even-up zone=TipSides blades=Lower strokes=1")]
    [InlineData("one stroke off the upper tip to level it with the lower", "adjustment kind=even-up zone=TipSides blades=Upper strokes=1")]
    [InlineData("two off the upper heart to even it up", "adjustment kind=even-up zone=HeartCentre blades=Upper strokes=2")]
    [InlineData("took three off the lower tip to balance it", "adjustment kind=even-up zone=TipSides blades=Lower strokes=3")]
    [InlineData("I'd take two off the lower tip to even it up", "note")]
    [InlineData("two strokes off the lower tip to match the upper", "adjustment kind=thin-whole-tip zone=TipSides blades=Lower strokes=2")]
    [InlineData("clipped, squared and papered the edge", "adjustment kind=clip zone=TipEdge | adjustment kind=square-tip zone=TipEdge | adjustment kind=smooth-edge zone=TipEdge")]
    [InlineData("squared and polished the tip", "adjustment kind=square-tip zone=TipEdge | adjustment kind=smooth-edge zone=TipEdge")]
    [InlineData("clipped and papered the edge", "adjustment kind=clip zone=TipEdge | adjustment kind=smooth-edge zone=TipEdge")]
    [InlineData("papered the edge", "adjustment kind=smooth-edge zone=TipEdge")]
    [InlineData("papered the sides", "note")]
    [InlineData("will polish the tip", "note")]
    [InlineData("sanded the rails", "adjustment kind=something-else zone=Rails")]
    [InlineData("sanded the heart", "adjustment kind=something-else zone=HeartCentre")]
    [InlineData("filed the rails", "adjustment kind=something-else zone=Rails")]
    [InlineData("sanded the bark", "adjustment kind=something-else zone=Bark")]
    [InlineData("sanded the spine", "adjustment kind=something-else zone=Spine")]
    [InlineData("sanded the tip", "adjustment kind=smooth-edge zone=TipEdge")]
    [InlineData("didn't sand the rails", "note")]
    public void What_was_done_where(string phrase, string read) => Assert.Equal(read, Read(phrase));

    [Theory]
    [InlineData("C sharp crow, that's high", "test test=Crow pitch=C#")]
    [InlineData("B crow, that's low", "test test=Crow pitch=B")]
    [InlineData("crow is C sharp, that's too high", "test test=Crow pitch=C#")]
    [InlineData("C crow, that's low", "test test=Crow pitch=C lean=flat")]
    [InlineData("crow B, that's flat", "test test=Crow pitch=B lean=flat")]
    [InlineData("A: it's a bit flat", "test test=TuningNote step=\"a little flat\" pitch=A")]
    [InlineData("A: flat", "test test=TuningNote step=flat pitch=A")]
    [InlineData("A: in tune", "test test=TuningNote step=\"in tune\" pitch=A")]
    [InlineData("D: it's a bit flat", "note")]
    [InlineData("C: a bit flat", "test test=Crow pitch=C lean=flat")]
    [InlineData("low notes just right", "test test=LowResponse step=\"speaks at once\"")]
    [InlineData("the low notes are just right", "test test=LowResponse step=\"speaks at once\"")]
    [InlineData("high notes just right", "test test=HighSteadiness step=holds")]
    [InlineData("low D takes a shove", "test test=LowResponse pitch=D")]
    [InlineData("low C needs a shove to speak", "test test=LowResponse pitch=C")]
    [InlineData("low D needs a push", "test test=LowResponse pitch=D")]
    [InlineData("low notes take a push", "test test=LowResponse")]
    [InlineData("low D comes with a shove", "test test=LowResponse pitch=D")]
    [InlineData("softest start on low D needs a push", "test test=SoftestStart step=\"needs a push\" pitch=D")]
    [InlineData("low D speaks without a shove", "test test=LowResponse step=\"speaks at once\" pitch=D")]
    [InlineData("takes a push to start", "test test=SoftestStart step=\"needs a push\"")]
    public void Which_value_a_note_has(string phrase, string read) => Assert.Equal(read, Read(phrase));

    private static string Read(string phrase, params string[] before) => string.Join(" | ", PhraseReader.Read(phrase, PhraseCorpus.Context(before)).Entries.Select(PhraseCorpus.LineOf));
}
