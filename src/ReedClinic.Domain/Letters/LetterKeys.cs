using System.Globalization;

namespace ReedClinic.Domain.Letters;

/// <summary>What the key of a block says about it, for words whose block isn't composed any more.</summary>
internal static class LetterKeys
{
    private static readonly Dictionary<string, (BlockKind Kind, bool IsList)> Whole = new()
    {
        ["done-well"] = (BlockKind.DoneWell, false),
        ["arrival"] = (BlockKind.Arrival, false),
        ["answers"] = (BlockKind.Answers, false),
        ["lesson"] = (BlockKind.Lesson, false),
        ["habit"] = (BlockKind.Habit, false),
        ["check"] = (BlockKind.CheckYourself, true),
        ["stroke"] = (BlockKind.Stroke, false),
        ["plan"] = (BlockKind.Plan, true),
        ["care"] = (BlockKind.Care, false),
    };

    private static readonly Dictionary<string, (BlockKind Kind, bool IsList)> OfReed = new()
    {
        ["now"] = (BlockKind.ReedNow, false),
        ["answers"] = (BlockKind.ReedAnswers, false),
        ["use"] = (BlockKind.ReedUse, true),
    };

    /// <summary>The block of a key, with nothing in it; null for a key that no letter has.</summary>
    /// <param name="key">The key.</param>
    /// <param name="reeds">The letter's reeds.</param>
    internal static LetterBlock? Empty(string key, IReadOnlyList<LetterReed> reeds)
    {
        if (Whole.TryGetValue(key, out var whole))
        {
            return new(key, whole.Kind, []) { IsList = whole.IsList };
        }

        foreach (var reed in reeds)
        {
            var prefix = string.Create(CultureInfo.InvariantCulture, $"reed-{reed.Number}-");
            if (key.StartsWith(prefix, StringComparison.Ordinal) && OfReed.TryGetValue(key[prefix.Length..], out var part))
            {
                return new(key, part.Kind, []) { IsList = part.IsList, Reed = reed.Id };
            }
        }

        return null;
    }

    /// <summary>Whether a block stands before another one in a letter.</summary>
    /// <param name="block">The block.</param>
    /// <param name="other">The other one.</param>
    internal static bool Before(LetterBlock block, LetterBlock other) =>
        other.Reed is { } reed ? block.Reed == reed && block.Kind < other.Kind : block.Kind < other.Kind;
}
