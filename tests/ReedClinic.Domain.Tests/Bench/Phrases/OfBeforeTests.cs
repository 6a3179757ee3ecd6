using ReedClinic.Domain.Bench.Phrases;

namespace ReedClinic.Domain.Tests.Bench.Phrases;

/// <summary>What is denied, only compared with before, or done to something else than the reed is no fault, no poor step and no work.</summary>
public sealed class OfBeforeTests
{
    [Theory]
    [InlineData("low D no longer late", "test test=LowResponse pitch=D")]
    [InlineData("low notes no longer late", "test test=LowResponse")]
    [InlineData("low D late no more", "test test=LowResponse pitch=D")]
    [InlineData("the low octave is missing", "test test=Crow step=\"high only\"")]
    [InlineData("low octave missing in the crow", "test test=Crow step=\"high only\"")]
    [InlineData("high octave missing", "test test=Crow step=\"low only\"")]
    [InlineData("upper octave's missing", "test test=Crow step=\"low only\"")]
    [InlineData("heart is thicker now than before", "note")]
    [InlineData("tip is thinner now than before", "note")]
    [InlineData("back is thicker than yesterday", "note")]
    [InlineData("hardly scraped at all", "note")]
    [InlineData("spine hardly scraped at all", "note")]
    [InlineData("barely touched", "note")]
    [InlineData("hardly needs any air", "note")]
    [InlineData("opened the window, it's hot", "note")]
    [InlineData("opened a window, stuffy in here", "note")]
    [InlineData("spine thin but whole", "finding kind=spine-intact character=Strength zone=Spine")]
    [InlineData("spine thin but not scraped through", "finding kind=spine-intact character=Strength zone=Spine")]
    [InlineData("rails thin but there", "finding kind=rails-intact character=Strength zone=Rails")]
    public void What_is_denied_compared_or_of_the_room_is_no_fault(string phrase, string read) => Assert.Equal(read, Read(phrase));

    [Theory]
    [InlineData("low D is late", "test test=LowResponse step=late pitch=D")]
    [InlineData("low only", "test test=Crow step=\"low only\"")]
    [InlineData("heart thicker on the left than the right", "finding kind=heart-lopsided character=Fault zone=HeartSides sides=Left relation=ThickerThan other.sides=Right")]
    [InlineData("spine scraped", "finding kind=spine-scraped character=Fault zone=Spine")]
    [InlineData("opened the left window, two strokes", "adjustment kind=open-windows zone=Windows sides=Left strokes=2")]
    [InlineData("opened the window, crow C", "adjustment kind=open-windows zone=Windows | test test=Crow pitch=C")]
    public void What_is_said_plainly_stays(string phrase, string read) => Assert.Equal(read, Read(phrase));

    private static string Read(string phrase) => string.Join(" | ", PhraseReader.Read(phrase, PhraseCorpus.Context([])).Entries.Select(PhraseCorpus.LineOf));
}
