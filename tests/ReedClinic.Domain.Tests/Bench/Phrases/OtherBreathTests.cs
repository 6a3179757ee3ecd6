using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Phrases;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Bench.Phrases;

/// <summary>Where a deed was done, how sure a finding is, and what was only told of, is often said in another breath.</summary>
public sealed class OtherBreathTests
{
    [Theory]
    [InlineData("took three strokes. Right side of the tip.", "adjustment kind=thin-tip-sides zone=TipSides sides=Right strokes=3")]
    [InlineData("Two strokes. Lower blade, right corner.", "adjustment kind=thin-corners zone=TipCorners blades=Lower sides=Right strokes=2")]
    [InlineData("scraped (lower, right rail)", "adjustment kind=thin-rails zone=Rails blades=Lower sides=Right")]
    [InlineData("scraped a touch (right window, lower)", "adjustment kind=open-windows zone=Windows blades=Lower sides=Right words=\"a touch\"")]
    [InlineData("Removed a little – left rail, upper", "adjustment kind=thin-rails zone=Rails blades=Upper sides=Left words=\"a little\"")]
    public void Where_it_was_done_may_be_said_in_the_next_breath(string phrase, string line) => Says(phrase, line);

    [Theory]
    [InlineData("scraped the heart, the tip", "adjustment kind=dust-heart zone=HeartCentre", "adjustment kind=thin-whole-tip zone=TipSides")]
    [InlineData("scraped the tip, the heart and the windows", "adjustment kind=thin-whole-tip zone=TipSides", "adjustment kind=dust-heart zone=HeartCentre", "adjustment kind=open-windows zone=Windows")]
    [InlineData("dusted the heart, the windows, three strokes each", "adjustment kind=dust-heart zone=HeartCentre strokes=3", "adjustment kind=open-windows zone=Windows strokes=3")]
    [InlineData("scraped the tip, then the windows", "adjustment kind=thin-whole-tip zone=TipSides", "adjustment kind=open-windows zone=Windows")]
    public void Each_place_in_a_row_was_worked_on(string phrase, params string[] lines) => Says(phrase, lines);

    [Fact]
    public void As_much_on_the_other_blade_is_of_the_same_place() =>
        Assert.All(PhraseReader.Read("three strokes, heart, and three on the other blade as well", PhraseCorpus.Context([])).Entries, entry => Assert.Equal((EntryKind.Adjustment, Zone.HeartCentre), (entry.Kind, entry.Slots.Zone)));

    [Theory]
    [InlineData("I'll take three strokes. Right side of the tip.")]
    [InlineData("took nothing off. Right corner, lower blade.")]
    [InlineData("Should I take three strokes? Right corner.")]
    [InlineData("take three off the right window says my list")]
    [InlineData("three more strokes there and I'd be through to the staple")]
    [InlineData("order thread/cork/fishskin for Friday")]
    [InlineData("old wax smeared over the winding")]
    [InlineData("I made him a drawing where he sees the strokes.")]
    [InlineData("the bark is all scratched up above the winding")]
    public void What_is_only_told_of_is_no_work(string phrase) =>
        Assert.DoesNotContain(PhraseReader.Read(phrase, PhraseCorpus.Context([])).Entries, entry => entry.Kind is EntryKind.Adjustment);

    [Theory]
    [InlineData("scraped the tip, the heart is fine")]
    [InlineData("scraped the tip, the heart and windows look fine")]
    [InlineData("3 str fine paper over the tip edge, rinsed")]
    [InlineData("drew some air through it and moistened it to bring it back")]
    [InlineData("squeezed it a bit more closed")]
    public void One_piece_of_work_is_told_once(string phrase) =>
        Assert.Single(PhraseReader.Read(phrase, PhraseCorpus.Context([])).Entries, entry => entry.Kind is EntryKind.Adjustment);

    [Theory]
    [InlineData("squeezed it a bit more closed", "adjustment kind=close-press zone=Opening words=\"a bit\"")]
    [InlineData("squeezed the opening closed a touch", "adjustment kind=close-press zone=Opening words=\"a touch\"")]
    [InlineData("went a bit too far there", "note")]
    [InlineData("gone a bit too far there", "note")]
    public void What_came_of_it_is_no_entry_of_its_own(string phrase, string line) => Says(phrase, line);

    [Theory]
    [InlineData("the edge, erm, right I'd say", "test test=Edge step=right")]
    [InlineData("heart's, um, a little thick", "finding kind=heart-thick character=Fault zone=HeartCentre degree=slight")]
    [InlineData("the low D is late, isn't it", "test test=LowResponse step=late pitch=D")]
    public void A_hum_or_a_tag_changes_nothing(string phrase, string line) => Says(phrase, line);

    [Theory]
    [InlineData("heart thick? no, not at all", "lookedfor kind=heart-thick")]
    [InlineData("looks as if somebody took the tip too short", "finding kind=tip-short character=Fault zone=Rooftop certainty=Suspected")]
    [InlineData("it leaks now, right side I think", "finding kind=side-leak character=Fault zone=SideEdges sides=Right certainty=Suspected")]
    [InlineData("right side of the reed's thicker than the left", "finding kind=left-right-uneven character=Fault zone=WholeReed sides=Right relation=ThickerThan other.sides=Left")]
    [InlineData("thread's right up past where it ought to stop", "finding kind=thread-too-high character=Fault zone=Thread")]
    public void What_is_found_is_told_by_all_its_words(string phrase, string line) => Says(phrase, line);

    [Theory]
    [InlineData("thread goes too far up", "that high thread stays as it is, deliberately", "ended kind=thread-too-high ending=LeftOnPurpose")]
    [InlineData("heart is too thick", "that thick heart has improved", "ended kind=heart-thick ending=Better")]
    public void What_became_of_a_finding_is_no_remark(string before, string phrase, string line) =>
        Assert.Equal([line], PhraseReader.Read(phrase, PhraseCorpus.Context([before])).Entries.Select(entry => PhraseCorpus.LineOf(entry).ToString()));

    private static void Says(string phrase, params string[] lines) =>
        Assert.Equal(lines, PhraseReader.Read(phrase, PhraseCorpus.Context([])).Entries.Select(entry => PhraseCorpus.LineOf(entry).ToString()));
}
