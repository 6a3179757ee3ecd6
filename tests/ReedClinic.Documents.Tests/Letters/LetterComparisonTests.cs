using ReedClinic.Documents.Letters;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Tests.Letters;

namespace ReedClinic.Documents.Tests.Letters;

public sealed class LetterComparisonTests
{
    private static readonly LetterDraft Letter = LetterComposer.Compose(LetterScene.Usual(new Guid("018f0000-0000-7000-8000-000000000001")).Material);

    [Fact]
    public void The_same_letter_has_no_changes() => Assert.Empty(LetterComparison.Of(Letter, Letter));

    [Fact]
    public void What_came_and_what_went_can_be_put_together_again()
    {
        var later = Said("plan", "Sharpen the knife.\nStop early.");

        var change = Assert.Single(LetterComparison.Of(Letter, later));

        Assert.Equal("plan", change.Key);
        Assert.Equal(Letter.Blocks.Single(block => block.Key == "plan").Text, Text(change, WordsFate.Removed));
        Assert.Equal("Sharpen the knife.\nStop early.", Text(change, WordsFate.Added));
    }

    [Fact]
    public void A_part_that_is_mostly_new_is_told_as_what_went_and_then_what_came_and_a_small_change_word_by_word()
    {
        var old = Letter.Blocks.Single(block => block.Key == "care").Text;

        var rewritten = Assert.Single(LetterComparison.Of(Letter, Said("care", "Wet the reed, play it, and let it dry in the open.")));
        Assert.True(rewritten.IsRewritten);
        Assert.Equal([old, "Wet the reed, play it, and let it dry in the open."], rewritten.Runs.Select(run => run.Text));
        var mended = Assert.Single(LetterComparison.Of(Letter, Said("care", old + " Good luck.")));
        Assert.False(mended.IsRewritten);
        Assert.Equal(WordsFate.Kept, mended.Runs[0].Fate);
        Assert.DoesNotContain(mended.Runs, run => run.Fate == WordsFate.Removed);
    }

    [Fact]
    public void What_stayed_of_a_part_is_seen_to_have_stayed_however_much_came_and_went()
    {
        var old = Said("care", "Soak it for four minutes. Let it dry in the open. Write the day on a slip.");
        var now = old.EditedTo(
            new Dictionary<string, string> { ["care"] = "Play no longer than ten minutes at a time on the first three days, on easy notes. Soak it for five minutes. Let it dry in the open. When the weather turns, give it a little time before you judge it, because cane feels the air." }, Letter);

        var change = Assert.Single(LetterComparison.Of(old, now));

        Assert.False(change.IsRewritten);
        Assert.Equal(
            [
                ("Play no longer than ten minutes at a time on the first three days, on easy notes. ", WordsFate.Added), ("Soak it for ", WordsFate.Kept), ("four", WordsFate.Removed), ("five", WordsFate.Added),
                (" minutes. Let it dry in the open.", WordsFate.Kept), (" Write the day on a slip.", WordsFate.Removed),
                (" When the weather turns, give it a little time before you judge it, because cane feels the air.", WordsFate.Added),
            ],
            change.Runs.Select(run => (run.Text, run.Fate)));
    }

    [Fact]
    public void A_part_that_is_new_or_gone_is_told()
    {
        var without = Letter with { Blocks = [.. Letter.Blocks.Where(block => block.Key != "care")] };

        Assert.All(Assert.Single(LetterComparison.Of(Letter, without)).Runs, run => Assert.Equal(WordsFate.Removed, run.Fate));
        Assert.All(Assert.Single(LetterComparison.Of(without, Letter)).Runs, run => Assert.Equal(WordsFate.Added, run.Fate));
    }

    [Fact]
    public void Another_way_that_a_reed_plays_now_is_told()
    {
        var now = Letter.Blocks.First(block => block.Kind == BlockKind.ReedNow);
        var later = Letter with { Blocks = [.. Letter.Blocks.Select(block => block == now ? block with { Rows = [block.Rows[0] with { Now = "a B" }, .. block.Rows.Skip(1)] } : block)] };

        var change = Assert.Single(LetterComparison.Of(Letter, later));

        Assert.Equal("Reed 1: how it plays now", change.Title);
        Assert.Contains(change.Runs, run => run.Fate == WordsFate.Added && run.Text.Contains('B', StringComparison.Ordinal));
    }

    private static LetterDraft Said(string key, string text) => Letter.EditedTo(new Dictionary<string, string> { [key] = text }, Letter);

    private static string Text(PartChange change, WordsFate fate) =>
        string.Concat(change.Runs.Where(run => run.Fate == fate || run.Fate == WordsFate.Kept).Select(run => run.Text));
}
