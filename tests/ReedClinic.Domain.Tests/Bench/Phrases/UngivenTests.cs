using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Phrases;

namespace ReedClinic.Domain.Tests.Bench.Phrases;

/// <summary>What wasn’t said isn’t recorded as a result, and what isn’t named doesn’t end.</summary>
public sealed class UngivenTests
{
    [Theory]
    [InlineData("easy now")]
    [InlineData("easy now, squeak's gone")]
    [InlineData("middle D a hair sharp but fine")]
    [InlineData("E's a bit sharp but fine")]
    [InlineData("top G is a shade flat but fine")]
    [InlineData("it's dull up top")]
    [InlineData("dark up top")]
    [InlineData("speaks now but still a touch slow, low D drops out sometimes")]
    public void A_result_that_nobody_gave_is_not_recorded(string phrase) =>
        Assert.DoesNotContain(Read(phrase), entry => entry is { Kind: EntryKind.Test, Slots: { Step: "speaks at once" or "right" or "wanders" or "a little too easy" } });

    [Theory]
    [InlineData("low notes speak at once", "speaks at once")]
    [InlineData("a little too easy to blow", "a little too easy")]
    [InlineData("bit easy to blow", "a little too easy")]
    [InlineData("high A wanders", "wanders")]
    [InlineData("effort right", "right")]
    public void A_result_that_was_given_is(string phrase, string step) => Assert.Contains(Read(phrase), entry => entry is { Kind: EntryKind.Test } && entry.Slots.Step == step);

    [Theory]
    [InlineData("opening too narrow", "tone's gone thin")]
    [InlineData("opening too narrow", "sound's gone a bit dull")]
    [InlineData("opening too narrow", "better: A holds, pp start is clean")]
    [InlineData("edge of the tip ragged in the corners", "left side's better now, right still stuffy")]
    public void What_names_no_finding_ends_none(string before, string phrase) =>
        Assert.DoesNotContain(PhraseReader.Read(phrase, PhraseCorpus.Context([before])).Entries, entry => entry.Kind is EntryKind.FindingEnded);

    [Theory]
    [InlineData("left corner of the tip too thick", "left side's better now")]
    [InlineData("left corner of the tip too thick", "that's gone now")]
    [InlineData("opening too narrow", "opening's better now")]
    [InlineData("opening too narrow", "gone")]
    public void What_names_it_ends_it(string before, string phrase) =>
        Assert.Contains(PhraseReader.Read(phrase, PhraseCorpus.Context([before])).Entries, entry => entry.Kind is EntryKind.FindingEnded);

    [Theory]
    [InlineData("response at pp is good now")]
    [InlineData("response at pianissimo is clean")]
    [InlineData("attack at pp is good")]
    [InlineData("response is fine at pp")]
    public void An_answer_at_pp_is_how_softly_it_starts(string phrase) =>
        Assert.Contains(Read(phrase), entry => entry is { Kind: EntryKind.Test, Slots: { Test: TestKind.SoftestStart, Step: "starts softly" } });

    [Theory]
    [InlineData("low response at pp is good now")]
    [InlineData("low D responds at pp")]
    [InlineData("response is good")]
    public void What_is_said_of_low_notes_or_of_no_loudness_is_no_soft_start(string phrase) =>
        Assert.DoesNotContain(Read(phrase), entry => entry is { Kind: EntryKind.Test, Slots.Test: TestKind.SoftestStart });

    [Theory]
    [InlineData("doesn't hold its pitch when I go soft, goes flat")]
    [InlineData("won't hold pitch softly, it goes flat")]
    [InlineData("goes flat when it's soft")]
    [InlineData("pitch sags when I play quietly")]
    [InlineData("won't stay in tune when I go quiet")]
    [InlineData("the pitch drops in pp")]
    public void A_pitch_that_falls_softly_is_no_start(string phrase) =>
        Assert.DoesNotContain(Read(phrase), entry => entry is { Kind: EntryKind.Test, Slots.Test: TestKind.SoftestStart });

    [Theory]
    [InlineData("won't start softly", "will not start softly")]
    [InlineData("pp start needs a push", "needs a push")]
    [InlineData("starts softly", "starts softly")]
    public void A_soft_start_that_is_told_is_one(string phrase, string step) => Assert.Contains(Read(phrase), entry => entry is { Kind: EntryKind.Test, Slots.Test: TestKind.SoftestStart } && entry.Slots.Step == step);

    [Theory]
    [InlineData("took the wire down a hair")]
    [InlineData("took the first wire down a hair to open it")]
    [InlineData("took the top wire in a bit")]
    [InlineData("took the wire round a touch")]
    [InlineData("taken the wire in a little")]
    [InlineData("took the wire up a hair")]
    public void A_wire_that_is_there_is_worked_on(string phrase) => Assert.DoesNotContain(Read(phrase), entry => entry.Slots.Kind is "add-wire");

    [Theory]
    [InlineData("put a wire on")]
    [InlineData("added a wire")]
    [InlineData("fitted a second wire")]
    public void A_wire_that_is_put_on_is_new(string phrase) => Assert.Contains(Read(phrase), entry => entry is { Kind: EntryKind.Adjustment, Slots.Kind: "add-wire" });

    [Theory]
    [InlineData("attack's cleaner")]
    [InlineData("tongue's crisper")]
    [InlineData("tonguing is quicker now")]
    [InlineData("the attacks are better")]
    [InlineData("crow is far too high now")]
    [InlineData("the crow's much too high")]
    [InlineData("forked F is stuffy")]
    [InlineData("half-hole D is stuffy")]
    [InlineData("F sharp is stuffy")]
    public void What_is_compared_or_of_one_note_gives_no_result(string phrase) =>
        Assert.DoesNotContain(Read(phrase), entry => entry is { Kind: EntryKind.Test, Slots.Step: not null });

    [Theory]
    [InlineData("tongued notes come clean every time", "clean every time")]
    [InlineData("crow is low only", "low only")]
    [InlineData("crow high only", "high only")]
    [InlineData("a little too hard to blow", "a little too hard")]
    public void What_says_the_word_of_the_scale_gives_it(string phrase, string step) => Assert.Contains(Read(phrase), entry => entry.Slots.Step == step);

    [Theory]
    [InlineData("crow's a C sharp and a half, far too high")]
    [InlineData("crow C sharp, much too high")]
    [InlineData("crow is D, way too high")]
    public void A_crow_that_is_too_high_is_no_thread(string phrase)
    {
        var read = Read(phrase);

        Assert.Contains(read, entry => entry is { Kind: EntryKind.Test, Slots.Test: TestKind.Crow });
        Assert.DoesNotContain(read, entry => entry.Kind is EntryKind.Finding);
    }

    [Theory]
    [InlineData("thread's too high")]
    [InlineData("tied too high")]
    [InlineData("the wrapping goes far too high")]
    public void A_thread_that_is_too_high_is_found(string phrase) => Assert.Contains(Read(phrase), entry => entry.Slots.Kind is "thread-too-high");

    [Theory]
    [InlineData("tip's ragged on the left lower corner", "ragged corner's tidied")]
    [InlineData("tip's ragged on the left lower corner", "ragged edge trimmed")]
    [InlineData("there's a bump behind the tip", "bump smoothed")]
    [InlineData("left corner of the tip too thick", "thick corner thinned")]
    [InlineData("the thread leaks", "leaking thread sealed")]
    [InlineData("a bump in the left window", "that bump's sorted")]
    public void A_fault_that_was_seen_to_is_not_found_again(string before, string phrase) =>
        Assert.DoesNotContain(PhraseReader.Read(phrase, PhraseCorpus.Context([before])).Entries, entry => entry.Kind is EntryKind.Finding);

    [Theory]
    [InlineData("tip edge is ragged")]
    [InlineData("ragged edge needs to be trimmed")]
    [InlineData("tip's ragged, left corner")]
    public void A_fault_that_is_only_named_is_found(string phrase) => Assert.Contains(Read(phrase), entry => entry is { Kind: EntryKind.Finding, Slots.Kind: "tip-edge-ragged" });

    [Theory]
    [InlineData("squeezed the wire to open it")]
    [InlineData("squeezed it to open it up")]
    [InlineData("pressed the faces to close it a bit")]
    [InlineData("squeezed the sides to open it a touch")]
    [InlineData("bent the wire to make it rounder")]
    [InlineData("squeezed it at the wire to get it wider")]
    public void What_opens_it_is_for_the_sake_of_no_place(string phrase) =>
        Assert.All(PhraseReader.Read(phrase, PhraseCorpus.Context(["left corner of the tip too thick"])).Entries, entry => Assert.Null(entry.Slots.Sake));

    [Theory]
    [InlineData("scraped the windows to free the tip")]
    [InlineData("took the back down so that the tip stands out")]
    public void A_place_that_is_named_is_the_sake(string phrase) => Assert.Contains(Read(phrase), entry => entry.Slots.Sake is not null);

    private static IReadOnlyList<ReadEntry> Read(string phrase) => PhraseReader.Read(phrase, PhraseCorpus.Context([])).Entries;
}
