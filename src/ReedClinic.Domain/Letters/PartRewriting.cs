namespace ReedClinic.Domain.Letters;

/// <summary>How one part of a letter is to be written anew.</summary>
public abstract record PartWish
{
    private PartWish()
    {
    }

    /// <summary>As the log says it now, without what was changed by hand.</summary>
    public sealed record Afresh : PartWish;

    /// <summary>The same in other words, without what was changed by hand.</summary>
    public sealed record OtherWords : PartWish;

    /// <summary>As it stood in an earlier version.</summary>
    /// <param name="Number">The number of the version; 0 for before anything was kept.</param>
    public sealed record AsIn(int Number) : PartWish;
}

/// <summary>Writes one part of a letter anew and leaves every other as it is.</summary>
public static class PartRewriting
{
    private const int MostTries = 60;

    /// <summary>The letter with one part as it would be composed now; null when nothing would be composed for it.</summary>
    /// <param name="letter">The letter as it stands.</param>
    /// <param name="key">The part.</param>
    /// <param name="material">What the letter is composed from.</param>
    public static LetterDraft? Afresh(LetterDraft letter, string key, LetterMaterial material) =>
        Put(letter, LetterComposer.Compose(Turned(material, key, letter.Turns.GetValueOrDefault(key))), key);

    /// <summary>The letter with one part in other words, such that no other part changes by it; null when there are none.</summary>
    /// <param name="letter">The letter as it stands.</param>
    /// <param name="key">The part.</param>
    /// <param name="material">What the letter is composed from.</param>
    public static LetterDraft? InOtherWords(LetterDraft letter, string key, LetterMaterial material)
    {
        ArgumentNullException.ThrowIfNull(letter);
        var turn = letter.Turns.GetValueOrDefault(key);
        var stands = LetterComposer.Compose(Turned(material, key, turn));
        if (stands.Blocks.FirstOrDefault(block => block.Key == key) is not { Kind: not BlockKind.Cautions, Paragraphs.Count: > 0 } part)
        {
            return null;
        }

        // A word of the trade is explained where it comes first, so other words here could change what is said there.
        return Enumerable.Range(turn + 1, MostTries)
            .Select(other => LetterComposer.Compose(Turned(material, key, other)))
            .Where(other => other.Blocks.All(block => block.Key == key
                ? block.Text != part.Text && block.Text != Text(letter, key)
                : block.Text == Text(stands, block.Key)))
            .Where(other => !SaysTwice(other, key))
            .Select(other => Put(letter, other, key))
            .FirstOrDefault();
    }

    /// <summary>The letter with one part as it stood in an earlier one; null when it has no place any more.</summary>
    /// <param name="letter">The letter as it stands.</param>
    /// <param name="key">The part.</param>
    /// <param name="earlier">The earlier one; null for before anything was kept.</param>
    /// <param name="material">What the letter is composed from.</param>
    public static LetterDraft? AsIn(LetterDraft letter, string key, LetterDraft? earlier, LetterMaterial material)
    {
        ArgumentNullException.ThrowIfNull(letter);
        var composed = LetterComposer.Compose(Turned(material, key, earlier?.Turns.GetValueOrDefault(key) ?? 0));
        var was = earlier?.Blocks.FirstOrDefault(block => block.Key == key);
        return was is { IsEdited: true } && letter.HasPlaceFor(key)
            ? (letter with { Turns = composed.Turns }).EditedTo(new Dictionary<string, string> { [key] = was.Text }, composed)
            : Put(letter, composed, key);
    }

    private static LetterDraft? Put(LetterDraft letter, LetterDraft composed, string key) =>
        composed.Blocks.FirstOrDefault(block => block.Key == key) is { } fresh && letter.Blocks.Any(block => block.Key == key)
            ? letter with { Turns = composed.Turns, Blocks = [.. letter.Blocks.Select(block => block.Key == key ? fresh : block)] }
            : null;

    private static LetterMaterial Turned(LetterMaterial material, string key, int turn)
    {
        var turns = material.Turns.Where(part => part.Key != key).ToDictionary();
        if (turn > 0)
        {
            turns[key] = turn;
        }

        return material with { Turns = turns };
    }

    private static bool SaysTwice(LetterDraft letter, string key)
    {
        var elsewhere = letter.Blocks.Where(block => block.Key != key).SelectMany(Sentences).ToHashSet();
        return letter.Blocks.Where(block => block.Key == key).SelectMany(Sentences).Any(elsewhere.Contains);
    }

    private static IEnumerable<string> Sentences(LetterBlock block) => block.Paragraphs.SelectMany(paragraph => paragraph.Sentences).Select(sentence => sentence.Text);

    private static string? Text(LetterDraft letter, string key) => letter.Blocks.FirstOrDefault(block => block.Key == key)?.Text;
}
