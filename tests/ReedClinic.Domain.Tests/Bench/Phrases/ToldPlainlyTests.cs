using ReedClinic.Domain.Bench.Phrases;

namespace ReedClinic.Domain.Tests.Bench.Phrases;

/// <summary>What a phrase says plainly, and what only sounds like it: each is read whole, entry by entry.</summary>
public sealed class ToldPlainlyTests
{
    [Theory]
    [InlineData("the spine has not been scraped away", "lookedfor kind=spine-scraped")]
    [InlineData("the heart hasn't been scraped thin", "lookedfor kind=heart-thin")]
    [InlineData("the rails haven't been cut", "lookedfor kind=rails-cut")]
    [InlineData("the back hasn't been made too thin", "lookedfor kind=back-thin")]
    [InlineData("gave the cork a twist and it isn't loose", "lookedfor kind=cork-loose")]
    [InlineData("gave the cork a wiggle, it isn't loose", "lookedfor kind=cork-loose")]
    [InlineData("checked the thread and it doesn't leak", "lookedfor kind=thread-leak")]
    [InlineData("looked at the tip and it isn't cracked", "lookedfor kind=tip-cracked")]
    [InlineData("the spine has been scraped away", "finding kind=spine-scraped character=Fault zone=Spine")]
    [InlineData("the rails have been cut", "finding kind=rails-cut character=Fault zone=Rails")]
    [InlineData("gave the cork a wiggle and it's loose", "finding kind=cork-loose character=Fault zone=Cork")]
    [InlineData("gave the corners two strokes and they aren't thick", "adjustment kind=thin-corners zone=TipCorners strokes=2 | lookedfor kind=tip-corners-thick")]
    [InlineData("the cork's loose", "finding kind=cork-loose character=Fault zone=Cork")]
    public void A_fault_that_is_denied_was_only_looked_for(string phrase, string read) => Assert.Equal(read, Read(phrase));

    [Theory]
    [InlineData("I can feel bumps along the slope", "finding kind=bumps character=Fault zone=Transition")]
    [InlineData("I can feel ridges under the finger", "finding kind=bumps character=Fault zone=Transition known=Finger")]
    [InlineData("I can feel a ridge in the slope", "finding kind=bumps character=Fault zone=Transition")]
    [InlineData("I can feel lumps under the finger", "finding kind=bumps character=Fault zone=Transition known=Finger")]
    [InlineData("can feel a bump in the left window", "finding kind=bumps character=Fault zone=Windows sides=Left")]
    [InlineData("I can hear it leak at the sides", "finding kind=side-leak character=Fault zone=SideEdges known=Ear")]
    [InlineData("I can feel no bumps", "lookedfor kind=bumps")]
    [InlineData("I can't feel any bumps", "lookedfor kind=bumps")]
    [InlineData("felt for bumps and there are none", "lookedfor kind=bumps")]
    public void What_can_be_felt_is_there(string phrase, string read) => Assert.Equal(read, Read(phrase));

    [Theory]
    [InlineData("to start it quietly I have to give it a push", "needs a push")]
    [InlineData("I have to push to get it to start softly", "needs a push")]
    [InlineData("it only starts softly if I give it a push", "needs a push")]
    [InlineData("needs a shove to start softly", "needs a push")]
    [InlineData("won't start softly without a push", "needs a push")]
    [InlineData("soft start wants a push", "needs a push")]
    [InlineData("starts softly without a push", "starts softly")]
    [InlineData("starts softly without any push", "starts softly")]
    [InlineData("it starts softly, no push needed", "starts softly")]
    [InlineData("it doesn't need a push to start softly", "starts softly")]
    public void A_push_is_needed_or_it_is_not(string phrase, string step) => Assert.Equal($"test test=SoftestStart step=\"{step}\"", Read(phrase));

    [Theory]
    [InlineData("again: crow C", "clip a hair", "test test=Crow pitch=C")]
    [InlineData("again: peep B", "two strokes off the left window", "test test=Peep pitch=B")]
    [InlineData("once more: tuning A two flat", "clip a hair", "test test=TuningNote pitch=A cents=-2")]
    [InlineData("and again: crow C", "two strokes off the heart", "test test=Crow pitch=C")]
    [InlineData("so, again: crow B", "clip a hair", "test test=Crow pitch=B")]
    [InlineData("now again: crow C, ten flat", "dusted the heart", "test test=Crow pitch=C cents=-10")]
    [InlineData("again", "clip a hair", "adjustment kind=clip-hair zone=TipEdge words=\"a hair\"")]
    [InlineData("clip again: crow C", "clip a hair", "adjustment kind=clip-hair zone=TipEdge words=\"a hair\" | test test=Crow pitch=C")]
    [InlineData("again, and it starts on a breath", "one stroke off each corner", "adjustment kind=thin-corners zone=TipCorners strokes=1 | test test=SoftestStart step=\"starts on a breath\"")]
    public void Heard_again_is_no_work(string phrase, string before, string read) => Assert.Equal(read, Read(phrase, before));

    [Theory]
    [InlineData("meant to dust the heart but only smoothed the slope", "note | adjustment kind=blend zone=Transition")]
    [InlineData("I'd planned to clip, but took two off the left corner instead", "note | adjustment kind=thin-corners zone=TipCorners sides=Left strokes=2")]
    [InlineData("I thought of clipping, but dusted the heart instead", "note | adjustment kind=dust-heart zone=HeartCentre")]
    [InlineData("was going to clip, squared the tip instead", "note | adjustment kind=square-tip zone=TipEdge")]
    [InlineData("I wanted to thin the corners, took one stroke off the left window instead", "note | adjustment kind=open-windows zone=Windows sides=Left strokes=1")]
    [InlineData("I was about to clip it, but I only squared the tip", "note | adjustment kind=square-tip zone=TipEdge")]
    [InlineData("I meant to take one off the right corner and took two", "adjustment kind=thin-corners zone=TipCorners sides=Right strokes=2")]
    [InlineData("I meant to clip it but didn't", "note")]
    [InlineData("I wanted to dust the heart, but thinned corners are what it needs instead", "note")]
    [InlineData("I meant to scrape the heart, but somebody scraped it instead", "note")]
    [InlineData("I meant to clip it, but only looked at it", "note")]
    [InlineData("I wanted to clip it but the student came in", "note")]
    [InlineData("I want to open the windows, but I'll square the tip instead", "note")]
    public void What_was_done_instead_was_done(string phrase, string read) => Assert.Equal(read, Read(phrase));

    [Theory]
    [InlineData("dusted the heart without touching the spine", "adjustment kind=dust-heart zone=HeartCentre | leavealone zone=Spine")]
    [InlineData("two strokes off each window without touching the rails", "adjustment kind=open-windows zone=Windows strokes=2 | leavealone zone=Rails")]
    [InlineData("took two strokes off the corners without going near the middle of the tip", "adjustment kind=thin-corners zone=TipCorners strokes=2 | leavealone zone=TipCentre")]
    [InlineData("scraped the shoulders without touching the spine", "adjustment kind=take-heart-sides zone=HeartSides | leavealone zone=Spine")]
    [InlineData("two strokes in the windows, leaving the spine alone", "adjustment kind=open-windows zone=Windows strokes=2 | leavealone zone=Spine")]
    [InlineData("thinned the wings and left the centre alone", "adjustment kind=thin-tip-sides zone=TipSides | leavealone zone=TipCentre")]
    [InlineData("opened the windows without cutting the rails", "adjustment kind=open-windows zone=Windows")]
    [InlineData("clipped a hair without squaring it", "adjustment kind=clip-hair zone=TipEdge words=\"a hair\"")]
    [InlineData("I'd open the windows without touching the rails", "note")]
    public void A_place_that_was_spared_takes_nothing_from_the_work(string phrase, string read) => Assert.Equal(read, Read(phrase));

    [Theory]
    [InlineData("the sides don't leak but the thread does", "lookedfor kind=side-leak | finding kind=thread-leak character=Fault zone=Thread")]
    [InlineData("cork isn't loose but the thread is", "lookedfor kind=cork-loose | finding kind=thread-leak character=Fault zone=Thread")]
    [InlineData("the left corner isn't thick but the right one is", "lookedfor kind=tip-corners-thick | finding kind=tip-corners-thick character=Fault zone=TipCorners sides=Right")]
    [InlineData("the thread doesn't leak, but the sides do", "lookedfor kind=thread-leak | finding kind=side-leak character=Fault zone=SideEdges")]
    [InlineData("the sides leak but the thread doesn't", "finding kind=side-leak character=Fault zone=SideEdges | lookedfor kind=thread-leak")]
    [InlineData("the heart's too thick but the tip isn't", "finding kind=heart-thick character=Fault zone=HeartCentre | lookedfor kind=tip-thick")]
    [InlineData("the thread doesn't leak", "lookedfor kind=thread-leak")]
    [InlineData("the thread doesn't leak, the sides I've not tried", "lookedfor kind=thread-leak")]
    [InlineData("the heart isn't too thick but the corners are", "lookedfor kind=heart-thick | finding kind=tip-corners-thick character=Fault zone=TipCorners")]
    public void A_second_place_has_the_words_of_the_first(string phrase, string read) => Assert.Equal(read, Read(phrase));

    [Theory]
    [InlineData("the back's too thin on the upper, too thick on the lower", "finding kind=back-thin character=Fault zone=Windows blades=Upper | finding kind=back-thick character=Fault zone=Windows blades=Lower")]
    [InlineData("windows too thick on the upper blade, too thin on the lower", "finding kind=back-thick character=Fault zone=Windows blades=Upper | finding kind=back-thin character=Fault zone=Windows blades=Lower")]
    [InlineData("corners too thick on the left, too thin on the right", "finding kind=tip-corners-thick character=Fault zone=TipCorners sides=Left | finding kind=tip-thin character=Fault zone=TipCorners sides=Right")]
    [InlineData("heart too thick on the upper and too thin on the lower", "finding kind=heart-thick character=Fault zone=HeartCentre blades=Upper | finding kind=heart-thin character=Fault zone=HeartCentre blades=Lower")]
    [InlineData("the windows are thin on the upper blade, the lower blade's thick there", "finding kind=back-thin character=Fault zone=Windows blades=Upper | finding kind=back-thick character=Fault zone=Windows blades=Lower")]
    [InlineData("tip's thin on the left, the right's thick there", "finding kind=tip-thin character=Fault zone=TipSides sides=Left | finding kind=tip-thick character=Fault zone=TipSides sides=Right")]
    [InlineData("the heart is thick on the upper blade", "finding kind=heart-thick character=Fault zone=HeartCentre blades=Upper")]
    [InlineData("heart thick on the upper, corners thick on the lower", "finding kind=heart-thick character=Fault zone=HeartCentre blades=Upper | finding kind=tip-corners-thick character=Fault zone=TipCorners blades=Lower")]
    [InlineData("rails cut into on the right, and it leaks on the right", "finding kind=rails-cut character=Fault zone=Rails sides=Right | finding kind=side-leak character=Fault zone=SideEdges sides=Right")]
    public void The_second_half_has_a_blade_of_its_own(string phrase, string read) => Assert.Equal(read, Read(phrase));

    private static string Read(string phrase, params string[] before) => string.Join(" | ", PhraseReader.Read(phrase, PhraseCorpus.Context(before)).Entries.Select(PhraseCorpus.LineOf));
}
