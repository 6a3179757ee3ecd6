namespace ReedClinic.Web.Features.Bench.Fields;

/// <summary>One thing in a list to choose from.</summary>
/// <param name="Value">What the form sends.</param>
/// <param name="Words">What is shown.</param>
/// <param name="Group">The heading it stands under, if any.</param>
public sealed record ListChoice(string Value, string Words, string? Group = null)
{
    /// <summary>Every value of an enum by its words.</summary>
    /// <typeparam name="T">The enum.</typeparam>
    /// <param name="words">The words of a value.</param>
    public static IReadOnlyList<ListChoice> Of<T>(Func<T, string> words)
        where T : struct, Enum => [.. Enum.GetValues<T>().Select(value => new ListChoice(value.ToString(), words(value)))];
}
