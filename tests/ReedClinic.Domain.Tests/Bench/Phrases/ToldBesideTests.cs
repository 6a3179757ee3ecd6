using ReedClinic.Domain.Bench.Phrases;

namespace ReedClinic.Domain.Tests.Bench.Phrases;

/// <summary>The other one is the other one, “done now” ahead of work is no stop, and what is told at the end of a line is kept.</summary>
public sealed class ToldBesideTests
{
    [Theory]
    [InlineData("scraped the left corner, sorry, the other one", "adjustment kind=thin-corners zone=TipCorners sides=Right")]
    [InlineData("took two off the left window, no, the other one", "adjustment kind=open-windows zone=Windows sides=Right strokes=2")]
    [InlineData("scraped the left corner, then the other one", "adjustment kind=thin-corners zone=TipCorners sides=Left | adjustment kind=thin-corners zone=TipCorners sides=Right")]
    [InlineData("done now, tip thinned", "adjustment kind=thin-whole-tip zone=TipSides")]
    [InlineData("done: clipped a hair", "adjustment kind=clip-hair zone=TipEdge words=\"a hair\"")]
    [InlineData("leaks at the bottom of the sides a bit", "finding kind=side-leak character=Fault zone=SideEdges degree=slight")]
    [InlineData("leaks badly at the sides", "finding kind=side-leak character=Fault zone=SideEdges degree=strong")]
    [InlineData("hairline crack up the middle of the upper from the tip", "finding kind=tip-cracked character=Fault zone=TipCentre blades=Upper")]
    [InlineData("rails uneven", "finding kind=something-else character=Fault zone=Rails")]
    [InlineData("thinned the corners, tested: less resistance", "adjustment kind=thin-corners zone=TipCorners | test test=Effort")]
    [InlineData("rounded the corners a whisker both blades, tested: C speaks, crow C, less resistance", "adjustment kind=thin-corners zone=TipCorners words=\"a whisker\" | test test=Crow pitch=C | test test=Effort")]
    public void What_is_told_beside_is_kept(string phrase, string read) => Assert.Equal(read, Read(phrase));

    [Fact]
    public void That_left_and_right_match_is_unsure_of_the_blades() => Assert.Contains(PhraseReader.Read("left and right match", PhraseCorpus.Context([])).Entries.Single().Doubts, doubt => doubt.Slot is "kind");

    [Theory]
    [InlineData("done now", "stopped")]
    [InlineData("done now, crow C", "stopped | test test=Crow pitch=C")]
    [InlineData("all done, clipped a hair", "stopped | adjustment kind=clip-hair zone=TipEdge words=\"a hair\"")]
    [InlineData("crack at the left side of the tip", "finding kind=tip-cracked character=Fault zone=TipSides sides=Left")]
    [InlineData("took one off the left corner, then two off the right one", "adjustment kind=thin-corners zone=TipCorners sides=Left strokes=1 | adjustment kind=thin-corners zone=TipCorners sides=Right strokes=2")]
    [InlineData("leaks at the sides", "finding kind=side-leak character=Fault zone=SideEdges")]
    public void What_is_said_plainly_stays(string phrase, string read) => Assert.Equal(read, Read(phrase));

    private static string Read(string phrase) => string.Join(" | ", PhraseReader.Read(phrase, PhraseCorpus.Context([])).Entries.Select(PhraseCorpus.LineOf));
}
