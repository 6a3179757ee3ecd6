namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>What a token is.</summary>
internal enum TokenKind
{
    Word,
    Number,
    Note,
    Break,
    Symbol,
}

/// <summary>A word, number, note or mark of the phrase; every visible character belongs to one.</summary>
/// <param name="Text">How it is compared: small letters, one kind of apostrophe, one spelling.</param>
/// <param name="Start">Its first character.</param>
/// <param name="Length">How many characters.</param>
/// <param name="Kind">What it is.</param>
/// <param name="Number">Its value, for a number.</param>
/// <param name="IsCapital">True when it was typed with a capital.</param>
/// <param name="IsBound">True for a word that only bounds what was done, and is heard in passing: “not … more than”.</param>
internal readonly record struct Token(
    string Text, int Start, int Length, TokenKind Kind, decimal? Number = null, bool IsCapital = false, bool IsBound = false)
{
    internal int End => Start + Length;

    internal bool Is(string text) => Text == text;
}
