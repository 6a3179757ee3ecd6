using System.Text.RegularExpressions;
using ReedClinic.Domain.Outcomes;

namespace ReedClinic.Domain.Bench;

/// <summary>
/// The lasting name of one piece of advice on one reed, such as <c>clip-when-sharp/</c> and the entry since which it holds.
/// </summary>
/// <param name="Value">Small letters, digits, hyphens and one stroke; never renamed once it has been stored.</param>
public readonly partial record struct AdviceId(string Value)
{
    /// <summary>The longest name, in characters.</summary>
    public const int Longest = 80;

    /// <summary>True when it is written as such a name is.</summary>
    public bool IsWellFormed => Value is { Length: > 0 and <= Longest } && Form().IsMatch(Value);

    [GeneratedRegex("^[a-z0-9-]+(?:/[a-z0-9-]+)?\\z", RegexOptions.CultureInvariant)]
    private static partial Regex Form();
}

/// <summary>
/// A piece of advice that was shown on this reed and set aside: it doesn't come back. It is the teacher's own affair and stands
/// in no letter, on no sheet and on no student's page.
/// </summary>
public sealed class AdviceSetAside : BenchEntry
{
    private AdviceSetAside()
    {
    }

    /// <inheritdoc/>
    public override EntryKind Kind => EntryKind.AdviceSetAside;

    /// <summary>Which advice.</summary>
    public AdviceId AdviceId { get; private init; }

    /// <summary>Why, if it was said.</summary>
    public string? Words { get; private init; }

    /// <summary>Sets a piece of advice aside.</summary>
    /// <param name="advice">Which advice.</param>
    /// <param name="why">Why, if it is said.</param>
    /// <returns>The entry, or what is wrong with it.</returns>
    public static Outcome<AdviceSetAside> Of(AdviceId advice, string? why = null)
    {
        List<Problem> problems =
        [
            .. advice.IsWellFormed ? Array.Empty<Problem>() : [new Problem(nameof(AdviceId), "Choose the advice that is set aside.")],
            .. PlainText.Check(nameof(Words), why),
        ];
        return Checked.Give(problems, () => new AdviceSetAside { AdviceId = advice, Words = PlainText.Tidy(why) });
    }
}
