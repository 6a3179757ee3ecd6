namespace ReedClinic.Domain.Bench;

/// <summary>What somebody typed for an amount, taken apart.</summary>
internal static class AmountText
{
    private static readonly string[] Before = ["no more than ", "not more than ", "only ", "just ", "about ", "by ", "a ", "an "];
    private static readonly string[] After = ["’s breadth", "'s breadth"];

    /// <summary>The word that matters: “by a hair” and “a hair’s breadth” are both “hair”; empty for nothing.</summary>
    /// <param name="words">What was typed.</param>
    internal static string Bare(string? words)
    {
        var bare = (words ?? "").Trim().TrimEnd('.');
        foreach (var opening in Before.Where(opening => bare.StartsWith(opening, StringComparison.OrdinalIgnoreCase)))
        {
            bare = bare[opening.Length..];
        }

        foreach (var ending in After.Where(ending => bare.EndsWith(ending, StringComparison.OrdinalIgnoreCase)))
        {
            bare = bare[..^ending.Length];
        }

        return bare;
    }
}
