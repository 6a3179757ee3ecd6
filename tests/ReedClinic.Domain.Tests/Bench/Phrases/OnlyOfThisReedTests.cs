using ReedClinic.Domain.Bench.Phrases;
using ReedClinic.Domain.Bench;

namespace ReedClinic.Domain.Tests.Bench.Phrases;

/// <summary>What was done, found or mended has to be said of this reed and of that place: what only stands near such words is no entry without a doubt.</summary>
public sealed class OnlyOfThisReedTests
{
    [Theory]
    [InlineData("wanted to thin the corners and took three strokes on the other reed")]
    [InlineData("meant to scrape the tip and took two strokes on my finger")]
    [InlineData("meant to scrape the tip and took two strokes on the plaque")]
    [InlineData("meant to thin the corners and took a stroke on my thumb")]
    [InlineData("wanted to dust the heart and took a breath to think about it")]
    [InlineData("meant to scrape the tip and took two strokes to think about it")]
    [InlineData("I wanted to scrape the heart, but only scraped the tip on the last reed")]
    [InlineData("I wanted to scrape the heart, but only thinned the corners last week")]
    [InlineData("I wanted to scrape the heart, but only scraped the tip yesterday in my head")]
    [InlineData("I wanted to scrape the heart, but only thinned the tip of my pencil")]
    [InlineData("I'd planned to clip, but thinned the corners of the sample instead")]
    public void What_was_done_instead_elsewhere_is_no_work(string phrase) => Assert.DoesNotContain(Entries(phrase), entry => entry.Kind is EntryKind.Adjustment && entry.Doubts.Count == 0);

    [Theory]
    [InlineData("meant to scrape the tip and took two strokes", "adjustment kind=thin-whole-tip zone=TipSides strokes=2")]
    [InlineData("wanted to open the windows, but only thinned the corners lightly", "note | adjustment kind=thin-corners zone=TipCorners words=lightly")]
    [InlineData("I'd planned to clip, but took one off each corner instead", "note | adjustment kind=thin-corners zone=TipCorners strokes=1")]
    public void What_was_done_instead_here_is(string phrase, string read) => Assert.Equal(read, Read(phrase));

    [Theory]
    [InlineData("tip too thick on the upper, soft pencil mark on the lower")]
    [InlineData("tip too thick on the upper, soft light on the lower")]
    [InlineData("tip too thick on the left, go soft on the right")]
    [InlineData("tip too thick on the upper, make it thin on the lower")]
    [InlineData("tip too thick on the upper, nice and long on the lower")]
    [InlineData("tip too thick on the upper, go long on the lower")]
    [InlineData("tip too thick on the upper, short break on the lower")]
    [InlineData("tip too thick on the left, a short note on the right")]
    [InlineData("tip too thick on the upper, student says thin on the lower")]
    [InlineData("tip too thick on the left, was thin on the right last week")]
    [InlineData("tip too thick on the left, Ines wrote thick on the right")]
    [InlineData("windows too thin on the upper, a thick line on the lower")]
    public void A_word_near_the_other_place_is_no_fault_there(string phrase) => Assert.Single(Entries(phrase), entry => entry is { Kind: EntryKind.Finding, Slots.Character: FindingCharacter.Fault, Doubts.Count: 0 });

    [Theory]
    [InlineData("heart too thick on the upper, far too thin on the lower", "finding kind=heart-thick character=Fault zone=HeartCentre blades=Upper | finding kind=heart-thin character=Fault zone=HeartCentre blades=Lower degree=strong")]
    [InlineData("windows too thin on the left, a bit too thick on the right", "finding kind=back-thin character=Fault zone=Windows sides=Left | finding kind=back-thick character=Fault zone=Windows sides=Right degree=slight")]
    [InlineData("tip's thin on the upper, the lower's thick there", "finding kind=tip-thin character=Fault zone=TipSides blades=Upper | finding kind=tip-thick character=Fault zone=TipSides blades=Lower")]
    public void The_other_place_has_its_own_fault(string phrase, string read) => Assert.Equal(read, Read(phrase));

    [Theory]
    [InlineData("left corner still ragged after I trimmed it")]
    [InlineData("tip is ragged where I trimmed")]
    [InlineData("ragged tip even when trimmed")]
    [InlineData("left edge ragged from being trimmed")]
    [InlineData("the tip is ragged from how she trimmed it")]
    [InlineData("left corner is thin where it's scraped")]
    [InlineData("the edge is ragged since it was trimmed")]
    [InlineData("right window is thin where it's been scraped")]
    public void A_fault_after_the_work_is_still_one(string phrase) => Assert.Contains(Entries(phrase), entry => entry is { Kind: EntryKind.Finding, Slots.Character: FindingCharacter.Fault });

    [Theory]
    [InlineData("ragged corner's all tidied now")]
    [InlineData("thick corner thinned")]
    [InlineData("ragged edge on the left is trimmed")]
    public void A_fault_that_was_seen_to_is_none(string phrase) => Assert.DoesNotContain(Entries(phrase), entry => entry.Kind is EntryKind.Finding);

    [Theory]
    [InlineData("no leaks at the thread but the left side does", "lookedfor kind=thread-leak | finding kind=side-leak character=Fault zone=SideEdges sides=Left", false)]
    [InlineData("the thread doesn't leak but the right side does", "lookedfor kind=thread-leak | finding kind=side-leak character=Fault zone=SideEdges sides=Right", false)]
    [InlineData("the thread isn't leaking but one side is", "lookedfor kind=thread-leak | finding kind=side-leak character=Fault zone=SideEdges", false)]
    [InlineData("wire isn't loose but the thread is", "lookedfor kind=something-else | finding kind=thread-leak character=Fault zone=Thread", true)]
    [InlineData("cork isn't loose but the thread is", "lookedfor kind=cork-loose | finding kind=thread-leak character=Fault zone=Thread", true)]
    [InlineData("tip isn't too long but the wire is", "lookedfor kind=tip-long | finding kind=something-else character=Fault zone=Wire", true)]
    [InlineData("the heart isn't too thick but the corners are", "lookedfor kind=heart-thick | finding kind=tip-corners-thick character=Fault zone=TipCorners", false)]
    public void What_the_words_mean_there(string phrase, string read, bool unsure)
    {
        Assert.Equal(read, Read(phrase));
        Assert.Equal(unsure, Entries(phrase)[^1].Doubts.Count > 0);
    }

    private static IReadOnlyList<ReadEntry> Entries(string phrase) => PhraseReader.Read(phrase, PhraseCorpus.Context([])).Entries;

    private static string Read(string phrase) => string.Join(" | ", Entries(phrase).Select(PhraseCorpus.LineOf));
}
