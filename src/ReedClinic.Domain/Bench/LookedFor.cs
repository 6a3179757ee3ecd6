using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Outcomes;

namespace ReedClinic.Domain.Bench;

/// <summary>Something that was looked for and isn't there. Not looked for is not absent.</summary>
public sealed class LookedFor : BenchEntry
{
    private LookedFor()
    {
    }

    /// <inheritdoc/>
    public override EntryKind Kind => EntryKind.LookedFor;

    /// <summary>What was looked for.</summary>
    public FindingKindId FindingKind { get; private init; }

    /// <summary>How it was looked for; several may hold.</summary>
    public KnownBy KnownBy { get; private init; }

    /// <summary>A remark. For what is the studio's own: what it was called then, and the remark.</summary>
    public string? Words { get; private set; }

    /// <summary>Says that something was looked for and isn't there.</summary>
    /// <param name="kind">What was looked for.</param>
    /// <param name="knownBy">How.</param>
    /// <param name="words">A remark; needed for "something else".</param>
    /// <returns>The entry, or what is wrong with it.</returns>
    public static Outcome<LookedFor> Of(FindingKindId kind, KnownBy knownBy = KnownBy.NotSaid, string? words = null)
    {
        List<Problem> problems =
        [
            .. FindingChecks.Kind(nameof(FindingKind), kind, words, nameof(Words)),
            .. FindingChecks.How(knownBy),
        ];
        return Checked.Give(
            problems,
            () => new LookedFor { FindingKind = kind, KnownBy = knownBy, Words = PlainText.Tidy(words) });
    }

    /// <summary>The same with what its kind is called, where that is the studio's own.</summary>
    /// <param name="name">What it is called now.</param>
    /// <returns>A copy; this one stays as it is.</returns>
    public LookedFor Called(string name)
    {
        var copy = (LookedFor)MemberwiseClone();
        copy.Words = OwnId.Words(name, Words);
        return copy;
    }
}
