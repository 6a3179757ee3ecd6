using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Phrases;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Bench.Phrases;

/// <summary>What no word of a phrase says is not in the log.</summary>
public sealed class UnsaidTests
{
    [Theory]
    [InlineData("tip on lower blade ok, symmetric")]
    [InlineData("right channel fine")]
    [InlineData("left channel ok")]
    [InlineData("tip is thin enough")]
    [InlineData("it wobbles in the oboe")]
    [InlineData("tip symmetric")]
    [InlineData("the tip is symmetric")]
    public void What_is_called_fine_is_no_fault(string phrase) =>
        Assert.DoesNotContain(PhraseReader.Read(phrase, PhraseCorpus.Context([])).Entries, entry => entry.Slots.Character is FindingCharacter.Fault);

    [Theory]
    [InlineData("edge bright")]
    [InlineData("edge too bright")]
    [InlineData("sound bright")]
    [InlineData("high A sags when I play it softly")]
    [InlineData("A is steady now but still a touch flat")]
    public void A_step_is_never_the_opposite_of_what_is_heard(string phrase) =>
        Assert.DoesNotContain(PhraseReader.Read(phrase, PhraseCorpus.Context([])).Entries, entry => entry.Slots is { Test: TestKind.Edge, Step: "right" or "covered" } or { Test: TestKind.Swell, Step: "sags when loud" });

    [Theory]
    [InlineData("undo that")]
    [InlineData("take back the crack, the tip is fine")]
    [InlineData("remove the last entry")]
    [InlineData("take that back")]
    public void What_is_taken_back_is_not_said_once_more(string phrase) =>
        Assert.Equal([EntryKind.Note], PhraseReader.Read(phrase, PhraseCorpus.Context([])).Entries.Select(entry => entry.Kind));

    [Theory]
    [InlineData("Will she notice the difference? Probably not in that hall.")]
    [InlineData("He plays sharp on everything, so go easy on clipping. That's for me to remember.")]
    public void Remarks_in_a_row_are_one_with_all_their_words(string phrase)
    {
        var read = PhraseReader.Read(phrase, PhraseCorpus.Context([]));

        Assert.Equal((EntryKind.Note, phrase), (Assert.Single(read.Entries).Kind, read.Entries[0].Said));
    }

    [Fact]
    public void A_squeak_is_no_pitch_of_the_crow() =>
        Assert.DoesNotContain(PhraseReader.Read("squeaks on D", PhraseCorpus.Context([])).Entries, entry => entry.Slots.Test is TestKind.Crow);

    [Fact]
    public void A_clip_has_no_side() =>
        Assert.DoesNotContain(PhraseReader.Read("same on the left", PhraseCorpus.Context(["clip a hair"])).Entries, entry => entry.Kind is EntryKind.Adjustment);

    [Theory]
    [InlineData("squeezed the reed a little to close it", "close-press")]
    [InlineData("squeezed top and bottom to close it", "close-press")]
    [InlineData("squeezed the sides to close the opening", "open-squeeze")]
    [InlineData("pressed the blades to open it", "close-press")]
    [InlineData("pressed the sides a bit to close it", "close-press")]
    public void A_squeeze_that_is_said_to_go_the_other_way_is_shown_unsure(string phrase, string kind)
    {
        var read = Assert.Single(PhraseReader.Read(phrase, PhraseCorpus.Context([])).Entries);

        Assert.Equal((kind, "kind"), (read.Slots.Kind, Assert.Single(read.Doubts).Slot));
    }

    [Theory]
    [InlineData("put it aside to dry overnight")]
    [InlineData("set it aside to dry overnight")]
    [InlineData("put away to dry, back tomorrow")]
    public void What_is_put_aside_to_dry_is_not_surely_rested(string phrase) =>
        Assert.Contains(Doubt.Done, Assert.Single(PhraseReader.Read(phrase, PhraseCorpus.Context([])).Entries, entry => entry.Kind is EntryKind.Adjustment).Doubts);

    [Theory]
    [InlineData("I would soak it less, five minutes in warm water")]
    [InlineData("plan: leave it, she should play it in an hour a day first")]
    public void What_would_or_should_be_done_ends_no_finding(string phrase) =>
        Assert.DoesNotContain(PhraseReader.Read(phrase, PhraseCorpus.Context(["windows uneven"])).Entries, entry => entry.Kind is EntryKind.FindingEnded);

    [Theory]
    [InlineData("low notes much better")]
    [InlineData("the low register is much better")]
    [InlineData("response much better")]
    [InlineData("low notes worse")]
    [InlineData("high notes much better now", "low notes late")]
    public void What_is_only_compared_names_no_step(string phrase, params string[] before)
    {
        var read = Assert.Single(PhraseReader.Read(phrase, PhraseCorpus.Context(before)).Entries);

        Assert.Equal((EntryKind.Test, null), (read.Kind, read.Slots.Step));
        Assert.Contains(read.Doubts, doubt => doubt.Slot is "step");
    }

    [Fact]
    public void Low_notes_that_are_better_but_still_late_are_late() =>
        Assert.Equal((TestKind.LowResponse, "late"), Assert.Single(PhraseReader.Read("low notes better but still a bit late", PhraseCorpus.Context(["low notes late"])).Entries).Slots is var read ? (read.Test, read.Step) : default);

    [Theory]
    [InlineData("much freer now")]
    [InlineData("much freer now", "low notes late")]
    public void What_is_freer_is_of_no_notes_that_were_not_named(string phrase, params string[] before)
    {
        var read = Assert.Single(PhraseReader.Read(phrase, PhraseCorpus.Context(before)).Entries);

        Assert.Equal((TestKind.Effort, null), (read.Slots.Test, read.Slots.Step));
        Assert.NotEmpty(read.Doubts);
    }

    [Theory]
    [InlineData("windows uneven")]
    [InlineData("tip too thick")]
    public void A_test_that_is_better_than_before_ends_no_finding(string before)
    {
        var read = Assert.Single(PhraseReader.Read("low D late but better than before", PhraseCorpus.Context([before])).Entries);

        Assert.Equal((TestKind.LowResponse, "late", "D"), (read.Slots.Test, read.Slots.Step, read.Slots.Pitch));
    }

    [Fact]
    public void Which_of_two_findings_is_better_is_shown_unsure_where_it_was_not_said() =>
        Assert.Contains(Assert.Single(PhraseReader.Read("much better", PhraseCorpus.Context(["tip too long", "windows uneven"])).Entries).Doubts, doubt => doubt.Slot is "kind");

    [Theory]
    [InlineData("whoops, that peep was a C")]
    [InlineData("sorry, that peep was a C")]
    public void A_peep_that_is_put_right_is_no_second_one(string phrase)
    {
        var read = Assert.Single(PhraseReader.Read(phrase, PhraseCorpus.Context(["peep is B"])).Entries);

        Assert.Equal(EntryKind.Note, read.Kind);
        Assert.NotEmpty(read.Doubts);
    }

    [Theory]
    [InlineData("cut two hairs", "two hairs")]
    [InlineData("cut three hairs off the tip", "three hairs")]
    [InlineData("clipped a couple of hairs", "a couple of hairs")]
    public void Hairs_are_an_amount(string phrase, string words)
    {
        var read = Assert.Single(PhraseReader.Read(phrase, PhraseCorpus.Context([])).Entries);

        Assert.Equal((EntryKind.Adjustment, "clip-hair", words), (read.Kind, read.Slots.Kind, read.Slots.Words));
    }

    [Theory]
    [InlineData("the upper blade is a bit wider", Zone.WholeReed)]
    [InlineData("the back is a bit long", Zone.Windows)]
    [InlineData("the back's a bit long", Zone.Windows)]
    public void A_size_of_one_part_is_none_of_another(string phrase, Zone zone)
    {
        var read = Assert.Single(PhraseReader.Read(phrase, PhraseCorpus.Context([])).Entries);

        Assert.Equal((EntryKind.Finding, "something-else", zone), (read.Kind, read.Slots.Kind, read.Slots.Zone));
        Assert.Contains(read.Doubts, doubt => doubt.Slot is "kind");
    }
}
