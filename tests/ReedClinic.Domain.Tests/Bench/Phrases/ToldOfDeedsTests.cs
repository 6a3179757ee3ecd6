using ReedClinic.Domain.Bench.Phrases;

namespace ReedClinic.Domain.Tests.Bench.Phrases;

/// <summary>What is told of work, and of what was heard, in so many words: each phrase is read whole, entry by entry.</summary>
public sealed class ToldOfDeedsTests
{
    [Theory]
    [InlineData("the tip edge is ragged, I've left it that way on purpose", "tip edge ragged", "ended kind=tip-edge-ragged ending=LeftOnPurpose")]
    [InlineData("opening's too wide still, left on purpose", "opening too wide", "ended kind=opening-wide ending=LeftOnPurpose")]
    [InlineData("the slant's still there, left on purpose", "tip line slanted", "ended kind=tip-line-slanted ending=LeftOnPurpose")]
    [InlineData("thread's too far up, I've left it on purpose", "thread too far up", "ended kind=thread-too-high ending=LeftOnPurpose")]
    [InlineData("the bump's still there, I'm leaving it on purpose", "bump in the ramp", "ended kind=bumps ending=LeftOnPurpose")]
    [InlineData("the tip's long, I've left that deliberately", "the tip is too long", "ended kind=tip-long ending=LeftOnPurpose")]
    [InlineData("the slant's still there", "tip line slanted", "ended kind=tip-line-slanted ending=Unchanged")]
    [InlineData("the thread's too far up", "thread too far up", "finding kind=thread-too-high character=Fault zone=Thread")]
    [InlineData("the thread's too far up, I've left that deliberately", "clip a hair", "finding kind=thread-too-high character=Fault zone=Thread | ended kind=thread-too-high ending=LeftOnPurpose")]
    public void What_was_found_before_and_stays_has_ended(string phrase, string before, string read) => Assert.Equal(read, Read(phrase, before));

    [Theory]
    [InlineData("ran wet paper through the inside", "adjustment kind=clean-inside zone=Inside")]
    [InlineData("cleaned the inside with damp paper", "adjustment kind=clean-inside zone=Inside")]
    [InlineData("cleaned inside with a strip of wet paper", "adjustment kind=clean-inside zone=Inside")]
    [InlineData("wet-sanded the edge with fine paper", "adjustment kind=smooth-edge zone=TipEdge")]
    [InlineData("tied it again, then left it to settle", "adjustment kind=retie zone=Thread | adjustment kind=wait zone=WholeReed")]
    [InlineData("dusted the heart, then left it overnight to settle", "adjustment kind=dust-heart zone=HeartCentre | adjustment kind=wait zone=WholeReed")]
    [InlineData("retied it, then left it to settle for another night", "adjustment kind=retie zone=Thread | adjustment kind=wait zone=WholeReed")]
    [InlineData("I'll leave it to settle", "note")]
    [InlineData("squeezed it to open it a hair", "adjustment kind=open-squeeze zone=Opening words=\"a hair\"")]
    [InlineData("pressed it to close it a little", "adjustment kind=close-press zone=Opening words=\"a little\"")]
    [InlineData("squeezed the sides to open it a bit", "adjustment kind=open-squeeze zone=Opening words=\"a bit\"")]
    [InlineData("squeezed the sides to open it", "adjustment kind=open-squeeze zone=Opening")]
    public void Work_is_what_it_is_called(string phrase, string read) => Assert.Equal(read, Read(phrase));

    [Theory]
    [InlineData("found a bump and smoothed it", "adjustment kind=smooth-bumps zone=Transition")]
    [InlineData("found a bump in the slope and smoothed it out", "adjustment kind=smooth-bumps zone=Transition")]
    [InlineData("found a ridge in the left window and smoothed it", "adjustment kind=smooth-bumps zone=Windows sides=Left")]
    [InlineData("felt a ridge in the slope and smoothed it away", "adjustment kind=smooth-bumps zone=Transition")]
    [InlineData("found a bump in the slope", "finding kind=bumps character=Fault zone=Transition")]
    [InlineData("found a bump in the slope and clipped a hair", "finding kind=bumps character=Fault zone=Transition | adjustment kind=clip-hair zone=TipEdge words=\"a hair\"")]
    public void What_was_smoothed_in_the_same_breath_is_no_finding(string phrase, string read) => Assert.Equal(read, Read(phrase));

    [Theory]
    [InlineData("top notes hold", "test test=HighSteadiness step=holds")]
    [InlineData("low notes speak at once, top notes hold", "test test=LowResponse step=\"speaks at once\" | test test=HighSteadiness step=holds")]
    [InlineData("top notes hold now", "test test=HighSteadiness step=holds")]
    [InlineData("top notes hold with help", "test test=HighSteadiness step=\"holds with help\"")]
    [InlineData("the high notes hold if I support them", "test test=HighSteadiness step=\"holds with help\"")]
    [InlineData("top notes don't hold", "test test=HighSteadiness step=\"drops out\"")]
    public void What_holds_holds_without_help(string phrase, string read) => Assert.Equal(read, Read(phrase));

    [Theory]
    [InlineData("too thick, this heart", "finding kind=heart-thick character=Fault zone=HeartCentre")]
    [InlineData("quite thin, that tip", "finding kind=tip-thin character=Fault zone=TipSides")]
    [InlineData("very soft, these corners", "finding kind=tip-thin character=Fault zone=TipCorners degree=strong")]
    [InlineData("a bit thick, these windows", "finding kind=back-thick character=Fault zone=Windows degree=slight")]
    [InlineData("very thin, this heart", "finding kind=heart-thin character=Fault zone=HeartCentre degree=strong")]
    [InlineData("very thin, that tip, nothing left in it", "finding kind=tip-thin character=Fault zone=TipSides degree=strong")]
    [InlineData("heart too thick, tip too thin", "finding kind=heart-thick character=Fault zone=HeartCentre | finding kind=tip-thin character=Fault zone=TipSides")]
    public void How_it_is_may_be_said_before_what(string phrase, string read) => Assert.Equal(read, Read(phrase));

    [Theory]
    [InlineData("another clip might send the high notes wild", "risk")]
    [InlineData("one more stroke could make the top notes wander", "risk")]
    [InlineData("the top notes wander", "test test=HighSteadiness step=wanders")]
    [InlineData("crow C, low and high at once", "test test=Crow step=\"high and low all at once\" pitch=C")]
    public void What_is_feared_was_not_heard(string phrase, string read) => Assert.Equal(read, Read(phrase));

    [Theory]
    [InlineData("no overlap, which may be why it leaks at the sides", "finding kind=no-slip character=Fault zone=SideEdges | finding kind=side-leak character=Fault zone=SideEdges")]
    [InlineData("I think it leaks at the sides", "finding kind=side-leak character=Fault zone=SideEdges certainty=Suspected")]
    [InlineData("I think the middle of the tip's too thin, that's why it cracks", "finding kind=tip-centre-thin character=Fault zone=TipCentre certainty=Suspected")]
    public void Why_it_is_may_be_supposed_and_that_it_is_known(string phrase, string read) => Assert.Equal(read, Read(phrase));

    private static string Read(string phrase, params string[] before) => string.Join(" | ", PhraseReader.Read(phrase, PhraseCorpus.Context(before)).Entries.Select(PhraseCorpus.LineOf));
}
