using ReedClinic.Domain.Bench.Phrases;

namespace ReedClinic.Domain.Tests.Bench.Phrases;

/// <summary>What would be recorded as its opposite: where it was squeezed says which way, and hardly any resistance is too easy.</summary>
public sealed class SoundsOppositeTests
{
    [Theory]
    [InlineData("gentle squeeze top and bottom")]
    [InlineData("gave it a gentle squeeze top and bottom")]
    [InlineData("squeezed it top and bottom")]
    [InlineData("light squeeze, top and bottom")]
    [InlineData("squeezed the top and bottom of the opening")]
    [InlineData("squeezed the flats")]
    [InlineData("squeezed from above and below")]
    [InlineData("one gentle squeeze from above and below")]
    [InlineData("squeezed it between finger and thumb, top and bottom")]
    [InlineData("pinched it bottom and top")]
    [InlineData("gentle press top and bottom")]
    public void Top_and_bottom_closes(string phrase) => Assert.Equal("adjustment kind=close-press zone=Opening", Read(phrase));

    [Theory]
    [InlineData("squeezed the sides", "adjustment kind=open-squeeze zone=Opening")]
    [InlineData("gentle squeeze at the sides", "adjustment kind=open-squeeze zone=Opening")]
    [InlineData("gave it a gentle squeeze left and right", "adjustment kind=open-squeeze zone=Opening")]
    [InlineData("squeezed both edges gently", "adjustment kind=open-squeeze zone=SideEdges words=gently")]
    [InlineData("squeezed the blades flat", "adjustment kind=close-press zone=Opening")]
    [InlineData("squeezed the wire top and bottom", "adjustment kind=bend-wire zone=Wire")]
    [InlineData("needs a gentle squeeze top and bottom", "note")]
    [InlineData("I'd give it a squeeze top and bottom", "note")]
    public void Sides_a_wire_and_a_plan_stay_what_they_are(string phrase, string read) => Assert.Equal(read, Read(phrase));

    [Theory]
    [InlineData("squeezed top and bottom to open it")]
    [InlineData("squeezed the sides, top and bottom")]
    public void Both_ways_in_one_breath_are_asked_about(string phrase) => Assert.Contains(PhraseReader.Read(phrase, PhraseCorpus.Context([])).Entries.SelectMany(entry => entry.Doubts), doubt => doubt.Slot is "kind");

    [Theory]
    [InlineData("hardly any resistance", "far too easy")]
    [InlineData("barely any resistance", "far too easy")]
    [InlineData("there's scarcely any real resistance", "far too easy")]
    [InlineData("hardly any resistance left now", "far too easy")]
    [InlineData("not much resistance", "a little too easy")]
    [InlineData("not enough resistance", "a little too easy")]
    [InlineData("it lacks resistance", "a little too easy")]
    [InlineData("too little resistance", "a little too easy")]
    public void Hardly_any_resistance_is_too_easy(string phrase, string step) => Assert.Equal($"test test=Effort step=\"{step}\"", Read(phrase));

    [Theory]
    [InlineData("almost no resistance", "far too easy")]
    [InlineData("too much resistance", "far too hard")]
    [InlineData("a lot of resistance", "far too hard")]
    [InlineData("the resistance is right", "right")]
    [InlineData("plenty of resistance", "right")]
    [InlineData("resistance is fine", "right")]
    public void Resistance_is_else_as_it_was_read(string phrase, string step) => Assert.Equal($"test test=Effort step=\"{step}\"".Replace("\"right\"", "right", StringComparison.Ordinal), Read(phrase));

    private static string Read(string phrase) => string.Join(" | ", PhraseReader.Read(phrase, PhraseCorpus.Context([])).Entries.Select(PhraseCorpus.LineOf));
}
