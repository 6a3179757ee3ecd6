using ReedClinic.Domain.Bench.Phrases.Judging;

namespace ReedClinic.Domain.Tests.Bench.Phrases.Teaching;

/// <summary>One segment of a labelled phrase, or a clause of our own: what is seen of it, and what it says.</summary>
/// <param name="Seen">All signs.</param>
/// <param name="Matter">The signs of what it is about.</param>
internal sealed record Lesson(IReadOnlyList<string> Seen, IReadOnlyList<string> Matter)
{
    /// <summary>The kind of entry it begins; nothing new; or empty while that isn’t known.</summary>
    public string Kind { get; set; } = "";

    /// <summary>What the entry says, as the judge is asked for it.</summary>
    public string? Answer { get; set; }

    /// <summary>How much it counts beside the others.</summary>
    public double Weight { get; init; } = 1;

    /// <summary>The same without what the rules made of it.</summary>
    public Lesson Blind() => this with { Seen = [.. Seen.Where(sign => !(sign.StartsWith("r=", StringComparison.Ordinal) || sign.StartsWith("rl=", StringComparison.Ordinal)))] };

    /// <summary>What of a labelled entry the judge is asked for.</summary>
    public static string? AnswerOf(Line label) => label.Kind switch
    {
        "finding" or "lookedfor" or "adjustment" => label.Slots.GetValueOrDefault("kind"),
        "test" => $"{label.Slots["test"]}/{label.Slots.GetValueOrDefault("step", Judge.Nothing)}",
        "ended" => label.Slots.GetValueOrDefault("ending"),
        "riskclosed" => label.Slots.GetValueOrDefault("outcome"),
        "verdict" => label.Slots.GetValueOrDefault("verdict"),
        _ => null,
    };
}
