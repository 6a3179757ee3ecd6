using ReedClinic.Domain.Bench.Phrases;

namespace ReedClinic.Domain.Tests.Bench.Phrases;

/// <summary>Barely, not enough, none left, thinner now, and what was done to something else: none is recorded as its opposite, as a fault that is none, or as work on this reed.</summary>
public sealed class BarelyTests
{
    [Theory]
    [InlineData("high notes barely hold", "test test=HighSteadiness")]
    [InlineData("high D scarcely holds", "test test=HighSteadiness pitch=D")]
    [InlineData("low notes barely speak", "test test=LowResponse")]
    [InlineData("barely in tune", "test test=TuningNote")]
    [InlineData("the swell barely keeps its place", "test test=Swell")]
    [InlineData("barely starts softly", "test test=SoftestStart")]
    [InlineData("sides hardly close first", "test test=ClosingOrder")]
    [InlineData("scarcely seals", "note")]
    [InlineData("only just seals", "note")]
    [InlineData("slope is hardly smooth", "note")]
    [InlineData("hardly closes at all", "note")]
    [InlineData("high notes hold", "test test=HighSteadiness step=holds")]
    [InlineData("seals well", "finding kind=seals-well character=Strength zone=SideEdges")]
    [InlineData("barely holds a vacuum", "test test=Seal step=\"holds for a moment\"")]
    [InlineData("hardly leaks", "lookedfor kind=side-leak")]
    [InlineData("hardly any bark left", "lookedfor kind=bark-island")]
    [InlineData("low notes hardly speak", "test test=LowResponse step=\"will not speak\"")]
    public void What_only_just_does_it_has_no_best_value(string phrase, string read) => Assert.Equal(read, Read(phrase));

    [Theory]
    [InlineData("not enough off the tip", "finding kind=tip-thick character=Fault zone=TipSides")]
    [InlineData("not enough taken off the heart", "finding kind=heart-thick character=Fault zone=HeartCentre")]
    [InlineData("not enough off the left corner", "finding kind=tip-corners-thick character=Fault zone=TipCorners sides=Left")]
    [InlineData("not enough cane off the back", "finding kind=back-thick character=Fault zone=Windows")]
    [InlineData("heart not thick enough", "finding kind=heart-thin character=Fault zone=HeartCentre")]
    [InlineData("the windows aren't deep enough", "finding kind=back-thick character=Fault zone=Windows")]
    [InlineData("not closed enough", "test test=Opening step=\"a little open\"")]
    [InlineData("no heart left", "finding kind=heart-thin character=Fault zone=HeartCentre")]
    [InlineData("no opening to speak of", "finding kind=opening-narrow character=Fault zone=Opening")]
    [InlineData("no tip left", "note")]
    [InlineData("not enough cane in the tip", "finding kind=tip-thin character=Fault zone=TipSides")]
    [InlineData("tip isn't thin enough", "finding kind=tip-thick character=Fault zone=TipSides")]
    [InlineData("no bark left", "lookedfor kind=bark-island")]
    [InlineData("no leak to speak of", "lookedfor kind=side-leak")]
    [InlineData("not too thick, the heart", "lookedfor kind=heart-thick")]
    public void What_there_is_too_little_of(string phrase, string read) => Assert.Equal(read, Read(phrase));

    [Theory]
    [InlineData("tip is thinner now", "note")]
    [InlineData("tip's shorter now", "note")]
    [InlineData("heart's thicker now", "note")]
    [InlineData("opening is wider now", "note")]
    [InlineData("windows are deeper now", "note")]
    [InlineData("leak's stopped", "ended kind=side-leak ending=Gone")]
    [InlineData("the buzz has stopped", "note")]
    [InlineData("left it alone after all", "note")]
    [InlineData("dropped it", "note")]
    [InlineData("tip is too thin now", "finding kind=tip-thin character=Fault zone=TipSides")]
    [InlineData("tip is thinner on the left", "finding kind=tip-thin character=Fault zone=TipSides sides=Left")]
    [InlineData("tip is thinner than the heart", "finding kind=something-else character=Fault zone=TipSides relation=ThinnerThan other.zone=HeartCentre")]
    [InlineData("closes up after five minutes", "finding kind=closes-in-play character=Fault zone=Opening")]
    [InlineData("stopping here", "stopped")]
    public void What_changed_or_ended_is_no_fault_and_no_stop(string phrase, string read) => Assert.Equal(read, Read(phrase));

    [Theory]
    [InlineData("cut my thumb", "note")]
    [InlineData("squeezed the bulb", "note")]
    [InlineData("soaked the next one", "note")]
    [InlineData("put it down for today", "stopped")]
    [InlineData("cut the fishskin to size", "adjustment kind=something-else zone=SideEdges")]
    [InlineData("trimmed the fishskin", "adjustment kind=something-else zone=SideEdges")]
    [InlineData("peeled the fishskin off", "adjustment kind=something-else zone=SideEdges")]
    [InlineData("took the fishskin off", "adjustment kind=something-else zone=SideEdges")]
    [InlineData("straightened it on the staple", "adjustment kind=something-else zone=Eye")]
    [InlineData("wrapped fishskin round it", "adjustment kind=seal-sides zone=SideEdges")]
    [InlineData("clipped a hair", "adjustment kind=clip-hair zone=TipEdge words=\"a hair\"")]
    [InlineData("soaked it five minutes", "adjustment kind=soak zone=WholeReed")]
    [InlineData("straightened the tip", "adjustment kind=square-tip zone=TipEdge")]
    [InlineData("squeezed the sides", "adjustment kind=open-squeeze zone=Opening")]
    public void What_was_done_to_something_else_is_no_work_here(string phrase, string read) => Assert.Equal(read, Read(phrase));

    [Theory]
    [InlineData("low D no good", "test test=LowResponse pitch=D")]
    [InlineData("low D no", "test test=LowResponse pitch=D")]
    [InlineData("seal: none", "test test=Seal step=\"does not hold\"")]
    [InlineData("no low octave", "test test=Crow step=\"high only\"")]
    [InlineData("not bright enough", "test test=Edge step=\"a little covered\"")]
    [InlineData("sharp when loud", "test test=Swell")]
    [InlineData("corners: ok", "note")]
    [InlineData("tip: long", "finding kind=tip-long character=Fault zone=Rooftop")]
    [InlineData("opening: closed a bit", "test test=Opening step=\"a little closed\"")]
    [InlineData("low octave missing", "test test=Crow step=\"high only\"")]
    [InlineData("top octave only", "test test=Crow step=\"high only\"")]
    [InlineData("opening: right", "test test=Opening step=right")]
    [InlineData("late on low C", "test test=LowResponse step=late pitch=C")]
    [InlineData("heart: too long", "finding kind=heart-length character=Fault zone=HeartBottom")]
    public void A_value_that_is_denied_is_none(string phrase, string read) => Assert.Equal(read, Read(phrase));

    private static string Read(string phrase) => string.Join(" | ", PhraseReader.Read(phrase, PhraseCorpus.Context([])).Entries.Select(PhraseCorpus.LineOf));
}
