using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Phrases;

namespace ReedClinic.Domain.Tests.Bench.Phrases;

/// <summary>Which test goes on, what was found, looked for or caused, and what was done where: each is read whole.</summary>
public sealed class ToldOfAllTests
{
    [Theory]
    [InlineData("went up to a C sharp", "peep C", "test test=Peep pitch=C#")]
    [InlineData("dropped to B flat", "peep B", "test test=Peep pitch=Bb")]
    [InlineData("it came down to a B", "peep C", "test test=Peep pitch=B")]
    [InlineData("came up to a C", "crow B", "test test=Crow pitch=C")]
    [InlineData("crow came up to C", "peep B", "test test=Crow pitch=C")]
    public void The_test_told_of_last_goes_on(string phrase, string before, string read) => Assert.Equal(read, Read(phrase, before));

    [Theory]
    [InlineData("the opening is shut completely", "test test=Opening step=closed")]
    [InlineData("the tip's closed tight", "test test=Opening step=closed")]
    [InlineData("the reed is closed", "test test=Opening step=closed")]
    [InlineData("crow between C and C sharp", "test test=Crow pitch=C between=C#")]
    [InlineData("crow between B flat and B, both octaves", "test test=Crow step=\"high and low all at once\" pitch=Bb between=B")]
    [InlineData("A is five cents flat as a tuning note", "test test=TuningNote pitch=A cents=-5")]
    [InlineData("the low C was late", "test test=LowResponse step=late pitch=C")]
    [InlineData("one more stroke and I'd lose the low C", "risk")]
    [InlineData("any more off and the A would sag", "risk")]
    [InlineData("any further and I'd lose the A", "risk")]
    public void Which_test_it_is(string phrase, string read) => Assert.Equal(read, Read(phrase));

    [Theory]
    [InlineData("I closed the reed completely")]
    [InlineData("is the reed closed?")]
    [InlineData("the bus was late")]
    [InlineData("the concert was late")]
    [InlineData("my lesson was late")]
    [InlineData("the parcel was late")]
    public void No_test_was_made(string phrase) => Assert.DoesNotContain(PhraseReader.Read(phrase, PhraseCorpus.Context([])).Entries, entry => entry.Kind is EntryKind.Test);

    [Theory]
    [InlineData("spine intact on the lower, scraped away on the upper", "finding kind=spine-intact character=Strength zone=Spine blades=Lower | finding kind=spine-scraped character=Fault zone=Spine blades=Upper")]
    [InlineData("rails intact on the left, cut into on the right", "finding kind=rails-intact character=Strength zone=Rails sides=Left | finding kind=rails-cut character=Fault zone=Rails sides=Right")]
    [InlineData("rails intact on the upper, not cut into on the lower", "finding kind=rails-intact character=Strength zone=Rails blades=Upper")]
    [InlineData("nothing wrong with the rails, they haven't been cut", "lookedfor kind=rails-cut")]
    [InlineData("spine's intact", "finding kind=spine-intact character=Strength zone=Spine")]
    [InlineData("seals well, no leaks", "finding kind=seals-well character=Strength zone=SideEdges")]
    [InlineData("seals well, no hissing at all", "finding kind=seals-well character=Strength zone=SideEdges")]
    [InlineData("seals well, no leak at the thread", "finding kind=seals-well character=Strength zone=SideEdges | lookedfor kind=thread-leak")]
    [InlineData("I just chipped the right corner", "finding kind=tip-corner-broken character=Fault zone=TipCorners sides=Right arose=CausedByTheWork")]
    [InlineData("I'm afraid I cracked the tip on the upper", "finding kind=tip-cracked character=Fault zone=TipSides blades=Upper arose=CausedByTheWork")]
    [InlineData("the student tore the left corner", "finding kind=tip-corner-broken character=Fault zone=TipCorners sides=Left")]
    [InlineData("only now I see a crack in the upper blade", "finding kind=tip-cracked character=Fault zone=TipSides blades=Upper arose=SeenLaterAlreadyThere")]
    [InlineData("only now do I notice the bump on the slope", "finding kind=bumps character=Fault zone=Transition arose=SeenLaterAlreadyThere")]
    [InlineData("left shoulder thick against the right", "finding kind=heart-lopsided character=Fault zone=HeartSides sides=Left relation=ThickerThan other.sides=Right")]
    [InlineData("left corner too thick, right one fine", "finding kind=tip-corners-thick character=Fault zone=TipCorners sides=Left")]
    public void What_was_found(string phrase, string read) => Assert.Equal(read, Read(phrase));

    [Theory]
    [InlineData("one off the left window to even things up", "adjustment kind=even-up zone=Windows sides=Left strokes=1")]
    [InlineData("two strokes off the tip, even now", "adjustment kind=thin-whole-tip zone=TipSides strokes=2")]
    [InlineData("took a shade off the very edge", "adjustment kind=thin-edge zone=TipEdge words=\"a shade\"")]
    [InlineData("a hair off the edge, lower", "adjustment kind=thin-edge zone=TipEdge blades=Lower words=\"a hair\"")]
    [InlineData("clipped a hair off the edge", "adjustment kind=clip-hair zone=TipEdge words=\"a hair\"")]
    [InlineData("windows, lower: three strokes right, two left", "adjustment kind=open-windows zone=Windows blades=Lower sides=Right strokes=3 | adjustment kind=open-windows zone=Windows blades=Lower sides=Left strokes=2")]
    [InlineData("corners: one off the left, two off the right", "adjustment kind=thin-corners zone=TipCorners sides=Left strokes=1 | adjustment kind=thin-corners zone=TipCorners sides=Right strokes=2")]
    [InlineData("scraped the windows cleanly, nice work", "adjustment kind=open-windows zone=Windows")]
    [InlineData("windows scraped neatly, good job", "finding kind=something-else character=Strength zone=Windows")]
    [InlineData("I took too much off the tip, it's too thin now", "adjustment kind=thin-whole-tip zone=TipSides words=\"too much\" | finding kind=tip-thin character=Fault zone=TipSides arose=CausedByTheWork")]
    [InlineData("I'd want to hear it again after a week's playing", "note")]
    [InlineData("needs a week's playing", "verdict verdict=NeedsPlayingIn")]
    [InlineData("leave the tip alone, do the back next", "leavealone zone=TipSides | note")]
    public void What_was_done(string phrase, string read) => Assert.Equal(read, Read(phrase));

    private static string Read(string phrase, params string[] before) => string.Join(" | ", PhraseReader.Read(phrase, PhraseCorpus.Context(before)).Entries.Select(PhraseCorpus.LineOf));
}
