using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Phrases;

namespace ReedClinic.Domain.Tests.Bench.Phrases;

/// <summary>A number beside a note that is named is how far from it, unless something has moved so far.</summary>
public sealed class FromItsNoteTests
{
    [Theory]
    [InlineData("crow is a flat C, 15 cents down", TestKind.Crow, "C", -15)]
    [InlineData("crow now C, 10 down", TestKind.Crow, "C", -10)]
    [InlineData("crow C, eight cents up", TestKind.Crow, "C", 8)]
    [InlineData("C, eight cents up by the tuner.", TestKind.Crow, "C", 8)]
    [InlineData("crow is C now, down ten", TestKind.Crow, "C", -10)]
    [InlineData("crow B, 30 up", TestKind.Crow, "B", 30)]
    [InlineData("peep is B, five up", TestKind.Peep, "B", 5)]
    [InlineData("the A is twenty down", TestKind.TuningNote, "A", -20)]
    [InlineData("crow's come down to a C, ten down", TestKind.Crow, "C", -10)]
    public void How_far_from_its_note_is_heard(string phrase, TestKind test, string pitch, int cents) => Assert.Equal((test, pitch, (decimal?)cents, null), Assert.Single(PhraseReader.Read(phrase, PhraseCorpus.Context([])).Entries).Slots is var slots ? (slots.Test, slots.Pitch, slots.Cents, slots.Change) : default);

    [Theory]
    [InlineData("crow has come up ten")]
    [InlineData("crow came up ten to a C")]
    [InlineData("crow's up ten, a C now")]
    [InlineData("the crow is a C, ten cents up from before")]
    public void What_has_moved_so_far_is_no_distance(string phrase) => Assert.Equal((null, (decimal?)10), Assert.Single(PhraseReader.Read(phrase, PhraseCorpus.Context([])).Entries).Slots is var slots ? (slots.Cents, slots.Change) : default);
}
