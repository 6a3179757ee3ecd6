using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Phrases;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Bench.Phrases;

/// <summary>What puts right the entry before it: how much, where, which pitch; and what takes it back.</summary>
public sealed class EntryPutRightTests
{
    [Theory]
    [InlineData("no, two strokes not three", "left window, three strokes", 2)]
    [InlineData("no, not three, two", "left window, three strokes", 2)]
    [InlineData("make that two", "left window, three strokes", 2)]
    [InlineData("sorry, 4 strokes", "left window, three strokes", 4)]
    [InlineData("I meant five", "left window, three strokes", 5)]
    [InlineData("should be two strokes", "left window, three strokes", 2)]
    [InlineData("actually it was two strokes", "left window, three strokes", 2)]
    [InlineData("actually two strokes", "left window, three strokes", 2)]
    [InlineData("it was only two", "left window, three strokes", 2)]
    [InlineData("only two actually", "left window, three strokes", 2)]
    [InlineData("rather two strokes", "left window, three strokes", 2)]
    [InlineData("two strokes, I meant", "left window, three strokes", 2)]
    [InlineData("well actually it was more like four", "left window, three strokes", 4)]
    [InlineData("it was two strokes", "left window, three strokes", 2)]
    [InlineData("correct the last one: two strokes", "left window, three strokes", 2)]
    [InlineData("correct that to two strokes", "left window, three strokes", 2)]
    public void How_many_strokes_is_put_right(string text, string before, int strokes)
    {
        var work = Assert.IsType<Adjustment>(Of(text, "scraped the " + before));

        Assert.Equal((strokes, Zone.Windows, Sides.Left), (work.AmountStrokes, work.Zone, work.Sides));
    }

    [Theory]
    [InlineData("no, 0.1", 0.1)]
    [InlineData("sorry, 0.1 not 0.2", 0.1)]
    [InlineData("correction, 0.3 mm", 0.3)]
    [InlineData("no, three", 0.3)]
    [InlineData("sorry, 3 not 2 tenths", 0.3)]
    [InlineData("no, three not two tenths", 0.3)]
    [InlineData("make that three", 0.3)]
    [InlineData("I meant one", 0.1)]
    public void How_many_millimetres_is_put_right(string text, double millimetres) => Assert.Equal((decimal)millimetres, Assert.IsType<Adjustment>(Of(text, "clipped 0.2 mm")).Amount.Millimetres);

    [Theory]
    [InlineData("correction, the crow is C not D")]
    [InlineData("no, the crow is C")]
    [InlineData("I meant C")]
    [InlineData("no, C")]
    [InlineData("sorry, that was C")]
    [InlineData("make that C")]
    [InlineData("should have been C")]
    [InlineData("actually no, C")]
    [InlineData("actually C")]
    [InlineData("actually it was C")]
    [InlineData("no actually, it's C")]
    [InlineData("no no, C")]
    [InlineData("wait no, C")]
    [InlineData("hang on, that's C")]
    [InlineData("correct the last one: crow is C")]
    [InlineData("correct that: C")]
    public void A_pitch_is_put_right(string text) => Assert.Equal("C", Assert.IsType<Domain.Bench.Test>(Of(text, "crow is D")).Pitch!.PitchClass.Name);

    [Fact]
    public void A_test_keeps_its_remark_where_its_pitch_is_put_right() =>
        Assert.Equal("crow is C, a bit wobbly (no, the crow is D)", Assert.IsType<Domain.Bench.Test>(Of("no, the crow is D", "crow is C, a bit wobbly")).Words);

    [Theory]
    [InlineData("no, late", "low notes speak at once", "late")]
    [InlineData("sorry, I meant they are late", "low notes speak at once", "late")]
    public void A_word_of_the_scale_is_put_right(string text, string before, string step) => Assert.Equal(step, Assert.IsType<Domain.Bench.Test>(Of(text, before)).StepWord);

    [Theory]
    [InlineData("no, that was the upper blade right corner", "lower blade left corner too thick", Blades.Upper, Sides.Right)]
    [InlineData("no, that was the upper blade right corner", "two strokes off the lower blade left corner", Blades.Upper, Sides.Right)]
    [InlineData("I meant the lower blade", "upper blade left corner too thick", Blades.Lower, Sides.Left)]
    [InlineData("make that the right side", "upper blade left corner too thick", Blades.Upper, Sides.Right)]
    [InlineData("no, that was right not left", "lower blade left corner too thick", Blades.Lower, Sides.Right)]
    [InlineData("no, the right", "lower blade left corner too thick", Blades.Lower, Sides.Right)]
    [InlineData("no, upper not lower", "lower blade left corner too thick", Blades.Upper, Sides.Left)]
    public void A_place_is_put_right(string text, string before, Blades blades, Sides sides) =>
        Assert.Equal(new Place(Zone.TipCorners, blades, sides), Before.PlaceOf(Of(text, before)!));

    [Theory]
    [InlineData("I meant the back", "two strokes off the heart", Zone.Windows)]
    [InlineData("no, that was the heart", "scraped the back, two strokes", Zone.HeartCentre)]
    [InlineData("I meant the heart", "the back is too thick", Zone.HeartCentre)]
    [InlineData("no, that was the left corner", "the tip is too thick", Zone.TipCorners)]
    public void A_part_of_the_reed_is_put_right_where_the_same_can_be_said_of_it(string text, string before, Zone zone) => Assert.Equal(zone, Before.PlaceOf(Of(text, before)!)!.Value.Zone);

    [Theory]
    [InlineData("no change", "crow is D")]
    [InlineData("no low octave", "crow is D")]
    [InlineData("no, clipped a hair", "crow is D")]
    [InlineData("no, C?", "crow is D")]
    [InlineData("C", "crow is D")]
    [InlineData("no, 99999999999999999 strokes", "scraped the left window, three strokes")]
    [InlineData("two more strokes", "scraped the left window, three strokes")]
    [InlineData("sorry, the low notes are late", "crow is D")]
    [InlineData("no, the tip is too long", "two strokes off the heart")]
    [InlineData("sorry about the mess", "crow is D")]
    [InlineData("sorry, 15", "clipped two tenths")]
    [InlineData("no, that's right", "two strokes off the upper blade left corner")]
    [InlineData("that was right", "two strokes off the upper blade left corner")]
    [InlineData("wait, that's right", "two strokes off the upper blade left corner")]
    [InlineData("actually it's right", "upper blade left corner too thick")]
    [InlineData("no that's all right", "two strokes off the upper blade left corner")]
    [InlineData("no, it was left", "two strokes off the upper blade right corner")]
    [InlineData("no, one more stroke", "scraped the left window, three strokes")]
    [InlineData("sorry, two more", "scraped the left window, three strokes")]
    [InlineData("it should be C", "crow is D")]
    [InlineData("that should be C", "crow is D")]
    [InlineData("lower should be the same", "two strokes off the upper blade left corner")]
    [InlineData("make the lower the same", "two strokes off the upper blade left corner")]
    [InlineData("actually two strokes more", "scraped the left window, three strokes")]
    [InlineData("actually two strokes off the heart", "scraped the left window, three strokes")]
    [InlineData("it was two strokes that did it", "scraped the left window, three strokes")]
    [InlineData("it was two or three", "scraped the left window, three strokes")]
    [InlineData("only two strokes?", "scraped the left window, three strokes")]
    [InlineData("actually it was two strokes", "crow is D")]
    [InlineData("actually it's C now", "crow is D")]
    [InlineData("wait, the low notes are late", "crow is D")]
    [InlineData("correct the last one: two strokes", "crow is D")]
    [InlineData("correct the last one: whatever", "crow is D")]
    [InlineData("fix that, two strokes off the heart", "crow is D")]
    public void What_says_anything_else_puts_nothing_right(string text, string before) => Assert.Null(Of(text, before));

    [Theory]
    [InlineData("correct the last one: bit stuffy in the left hand notes", "low D speaks late", "a little too hard")]
    [InlineData("correct the last one: needs a push", "bit stuffy in the left hand notes", "needs a push")]
    [InlineData("no, correct the last entry, needs a push", "bit stuffy in the left hand notes", "needs a push")]
    [InlineData("change the last one to muffled", "stuffy", "covered")]
    [InlineData("fix the last one: muffled", "stuffy", "covered")]
    [InlineData("please correct that: a bit stuffy", "low D speaks late", "a little too hard")]
    public void A_test_that_is_said_to_be_corrected_takes_the_last_ones_place(string text, string before, string step)
    {
        var test = Assert.IsType<Domain.Bench.Test>(Of(text, before));

        Assert.Equal((step, null), (test.StepWord, test.Words));
    }

    [Theory]
    [InlineData("amend that, needs a push", "crow C", "needs a push")]
    [InlineData("make that needs a push", "blows freely", "needs a push")]
    [InlineData("no, make that needs a push", "blows freely", "needs a push")]
    [InlineData("undo that, needs a push", "low D speaks late", "needs a push")]
    [InlineData("scratch that, low notes late", "low notes speak at once", "late")]
    [InlineData("take that back, needs a push", "crow C", "needs a push")]
    [InlineData("change that, low notes late", "crow C", "late")]
    public void What_is_said_behind_the_words_that_take_back_stands_instead(string text, string before, string step) =>
        Assert.Equal(step, Assert.IsType<Domain.Bench.Test>(Of(text, before)).StepWord);

    [Theory]
    [InlineData("undo that, clipped a hair", "clipped half a millimetre", "clip-hair")]
    [InlineData("scratch that, clipped a hair", "crow C", "clip-hair")]
    [InlineData("make that half a millimetre", "clip a hair", "clip")]
    [InlineData("make that half a millimetre", "clipped 0.2 mm", "clip")]
    [InlineData("make that 0.2 mm", "clipped half a millimetre", "clip-hair")]
    [InlineData("strike that, two off the right corner", "two strokes off the left corner", "thin-corners")]
    public void Work_that_is_said_behind_them_stands_instead(string text, string before, string kind) => Assert.Equal(kind, Assert.IsType<Adjustment>(Of(text, before)).AdjustmentKind.Value);

    [Theory]
    [InlineData("make that corner thinner", "crow C")]
    [InlineData("make that reed sing", "crow C")]
    [InlineData("make that too thin", "tip too thick")]
    [InlineData("amend that, will clip it tomorrow", "crow C")]
    [InlineData("amend that, is it B?", "crow C")]
    [InlineData("undo that, wrong button", "crow C")]
    [InlineData("scratch that corner, two strokes", "crow C")]
    [InlineData("scratch that, needs a push", "verdict improved")]
    [InlineData("scratch that, clipped a hair and crow is B", "crow C")]
    public void What_says_nothing_that_could_stand_instead_changes_nothing(string text, string before) => Assert.Null(Of(text, before));

    [Theory]
    [InlineData("amend that, needs a push")]
    [InlineData("scratch that, crow is B")]
    [InlineData("amend that: crow is B")]
    public void Only_what_was_said_last_gives_way(string text)
    {
        var context = PhraseCorpus.Context(["crow C", "crow D"]);

        Assert.NotNull(EntryPutRight.Of(text, context.Log.Facts[^1].Now, context, alone: true));
        Assert.Null(EntryPutRight.Of(text, context.Log.Facts[0].Now, context, alone: true));
    }

    [Theory]
    [InlineData("undo that, clipped a hair", "undo that")]
    [InlineData("take that back, clipped a hair", "take that back")]
    [InlineData("delete that last one: clipped a hair", "delete that last one")]
    public void Where_nothing_gives_way_what_is_said_behind_is_still_read(string text, string lead) =>
        Assert.Equal([(EntryKind.Note, lead), (EntryKind.Adjustment, "clipped a hair")], PhraseReader.Read(text, PhraseCorpus.Context([])).Entries.Select(entry => (entry.Kind, entry.Said)));

    [Theory]
    [InlineData("actually it was two strokes", "crow is C")]
    [InlineData("actually two strokes", "soaked it")]
    [InlineData("it was only two", "crow is C")]
    [InlineData("only two strokes", "the tip is too thick")]
    [InlineData("rather two strokes", "crow is C")]
    [InlineData("correct the last one: two strokes", "crow is C")]
    [InlineData("correct the last one: needs a push", "verdict improved")]
    [InlineData("correct the last one: whatever that was", "crow is C")]
    public void What_may_put_right_and_names_nothing_is_no_new_entry(string text, string before)
    {
        var read = Assert.Single(PhraseReader.Read(text, PhraseCorpus.Context([before])).Entries);

        Assert.Equal(EntryKind.Note, read.Kind);
        Assert.NotEmpty(read.Doubts);
    }

    [Theory]
    [InlineData("two strokes off the left window, actually two")]
    [InlineData("actually two strokes off the left window")]
    [InlineData("scraped the left window, only two strokes")]
    [InlineData("fix that: two strokes off the left window", true)]
    public void Work_with_a_place_of_its_own_is_work(string text, bool isCommand = false) =>
        Assert.Equal(isCommand ? EntryKind.Note : EntryKind.Adjustment, Assert.Single(PhraseReader.Read(text, PhraseCorpus.Context(["crow is C"])).Entries).Kind);

    [Theory]
    [InlineData("nah scratch that, left the heart alone", "nah scratch that", EntryKind.LeaveAlone)]
    [InlineData("scrap that. clipped 0.2 mm", "scrap that", EntryKind.Adjustment)]
    [InlineData("no, scratch that, two strokes off the heart", "no, scratch that", EntryKind.Adjustment)]
    [InlineData("forget that, the tip is too thick", "forget that", EntryKind.Finding)]
    [InlineData("no that's wrong, scratch that, the crow is C", "no that's wrong, scratch that", EntryKind.Test)]
    [InlineData("ignore that last one: the crow is C", "ignore that last one", EntryKind.Test)]
    public void What_takes_back_first_is_in_the_words_of_no_entry_behind_it(string text, string lead, EntryKind kind)
    {
        var entries = PhraseReader.Read(text, PhraseCorpus.Context(["low notes speak at once"])).Entries;

        Assert.Equal([(EntryKind.Note, lead), (kind, text[(lead.Length + 1)..].Trim())], entries.Select(entry => (entry.Kind, entry.Said)));
        Assert.NotEmpty(entries[0].Doubts);
    }

    [Theory]
    [InlineData("scratch on the left window")]
    [InlineData("scratched the left window, two strokes")]
    public void What_takes_nothing_back_stays_in_its_entry(string text) => Assert.StartsWith(text[..6], PhraseReader.Read(text, PhraseCorpus.Context(["crow is C"])).Entries[0].Said, StringComparison.Ordinal);

    [Theory]
    [InlineData("no that's wrong, scratch that")]
    [InlineData("that's wrong, scratch that")]
    [InlineData("no, that's not right, scratch that")]
    [InlineData("wrong, take that back")]
    [InlineData("my mistake, undo that")]
    [InlineData("no scratch that one, that's wrong")]
    [InlineData("nah scratch that")]
    [InlineData("wrong button, delete that")]
    [InlineData("scratch that last one")]
    [InlineData("scratch that")]
    [InlineData("take that back")]
    [InlineData("take back that last one")]
    [InlineData("I take that back")]
    [InlineData("undo that")]
    [InlineData("undo")]
    [InlineData("strike that")]
    [InlineData("forget that")]
    [InlineData("no, forget that last one")]
    [InlineData("Sorry, scrap that.")]
    [InlineData("delete the last entry")]
    [InlineData("can you undo that please")]
    [InlineData("well, scratch that")]
    public void What_was_said_last_is_taken_back_in_words(string text) => Assert.True(LastTakenBack.Says(text));

    [Theory]
    [InlineData("undo that?")]
    [InlineData("take back the crack, the tip is fine")]
    [InlineData("take a bit off the back")]
    [InlineData("scratch on the left window")]
    [InlineData("scrap that, the heart is too thick")]
    [InlineData("forget about the tip")]
    [InlineData("that last one")]
    [InlineData("scrap this one")]
    [InlineData("scrap it")]
    [InlineData("ignore this one")]
    [InlineData("forget it")]
    [InlineData("scratch")]
    [InlineData("scratch it")]
    [InlineData("scratch this")]
    [InlineData("just scratch it again")]
    [InlineData("well I can undo that")]
    [InlineData("what can I undo")]
    [InlineData("can I undo that")]
    [InlineData("no that's wrong")]
    [InlineData("that's wrong, scratch that corner")]
    [InlineData("scratch the wrong one")]
    [InlineData("it's not right, scratch it")]
    [InlineData("")]
    [InlineData(null)]
    public void What_says_anything_else_takes_nothing_back(string? text) => Assert.False(LastTakenBack.Says(text));

    [Theory]
    [InlineData("undo", true)]
    [InlineData("no, undo that", true)]
    [InlineData("take that back", true)]
    [InlineData("take back the last entry", false)]
    [InlineData("scratch that", false)]
    [InlineData("delete it", false)]
    [InlineData("undo the windows", false)]
    public void Who_undoes_means_what_the_key_does_and_who_scratches_what_stands(string text, bool isSo) => Assert.Equal(isSo, LastTakenBack.TurnsBack(text));

    private static BenchEntry? Of(string text, string before)
    {
        var context = PhraseCorpus.Context([before]);
        return EntryPutRight.Of(text, context.Log.Facts[^1].Now, context, alone: true);
    }
}
