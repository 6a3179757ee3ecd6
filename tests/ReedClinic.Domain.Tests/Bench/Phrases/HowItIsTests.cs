using ReedClinic.Domain.Bench.Phrases;

namespace ReedClinic.Domain.Tests.Bench.Phrases;

/// <summary>How a reed is or came is no work, a length is no pitch, and a tuning note no crow: each is read whole.</summary>
public sealed class HowItIsTests
{
    [Theory]
    [InlineData("rather closed at the tip", "test test=Opening step=\"a little closed\"")]
    [InlineData("very closed at the end", "test test=Opening step=closed")]
    [InlineData("quite open at the tip", "test test=Opening step=\"a little open\"")]
    [InlineData("still rather closed at the tip", "test test=Opening step=\"a little closed\"")]
    [InlineData("very open at the tip", "test test=Opening step=\"very open\"")]
    [InlineData("pressed flat in the post", "note")]
    [InlineData("fishskin on already", "note")]
    [InlineData("done for now", "stopped")]
    [InlineData("nicely finished", "note")]
    [InlineData("tied a bit loose", "finding kind=something-else character=Fault zone=Thread degree=slight")]
    [InlineData("left both windows alone", "leavealone zone=Windows")]
    [InlineData("left both corners alone", "leavealone zone=TipCorners")]
    [InlineData("closed it a little", "adjustment kind=close-press zone=Opening words=\"a little\"")]
    [InlineData("opened it a touch", "adjustment kind=open-squeeze zone=Opening words=\"a touch\"")]
    [InlineData("pressed flat to close it", "adjustment kind=close-press zone=Opening")]
    [InlineData("put fishskin on", "adjustment kind=seal-sides zone=SideEdges")]
    [InlineData("this one's done for", "finding kind=worn character=Fault zone=WholeReed")]
    [InlineData("cork's loose", "finding kind=cork-loose character=Fault zone=Cork")]
    [InlineData("tip falls away nicely to the sides", "finding kind=tip-falls-to-sides character=Strength zone=TipCentre")]
    [InlineData("left the left corner alone", "leavealone zone=TipCorners sides=Left")]
    public void How_it_is_or_came(string phrase, string read) => Assert.Equal(read, Read(phrase));

    [Theory]
    [InlineData("sixty nine and a half long", "test test=Length length=69.5")]
    [InlineData("sixty nine long", "test test=Length length=69")]
    [InlineData("length seventy and a half", "test test=Length length=70.5")]
    [InlineData("seventy and a half over all", "test test=Length length=70.5")]
    [InlineData("it measures 70 and a quarter", "test test=Length length=70.25")]
    [InlineData("length 71 over all", "test test=Length length=71")]
    [InlineData("tip's long", "finding kind=tip-long character=Fault zone=Rooftop")]
    [InlineData("clipped to seventy", "adjustment kind=clip zone=TipEdge")]
    [InlineData("A has gone up five", "test test=TuningNote pitch=A change=5")]
    [InlineData("A has come down five", "test test=TuningNote pitch=A change=-5")]
    [InlineData("the crow has gone up five", "test test=Crow change=5")]
    [InlineData("crow C with the low octave underneath", "test test=Crow step=\"high, then low joins\" pitch=C")]
    [InlineData("crow C, low one late", "test test=Crow pitch=C")]
    [InlineData("crow's a healthy C with the low one underneath", "test test=Crow step=\"high, then low joins\" pitch=C")]
    [InlineData("crow B with a low C", "test test=Crow pitch=B")]
    [InlineData("crow C, a bit low", "test test=Crow pitch=C lean=flat")]
    [InlineData("crow's low", "test test=Crow step=\"low only\"")]
    public void Which_test_it_is(string phrase, string read) => Assert.Equal(read, Read(phrase));

    private static string Read(string phrase) => string.Join(" | ", PhraseReader.Read(phrase, PhraseCorpus.Context([])).Entries.Select(PhraseCorpus.LineOf));
}
