using ReedClinic.Domain.Faults;

namespace ReedClinic.Domain.Letters.Wordings;

/// <summary>How a letter says one kind of finding.</summary>
/// <param name="What">What is there, as a clause: “the corners of the tip are still thick”.</param>
/// <param name="Shows">What that does to a reed in general, to stand after “which usually”; null where there is nothing to add.</param>
/// <remarks>
/// All of it is common practice, in our own words. What it does is said of reeds in general: whether this reed did so is told by
/// the tests.
/// </remarks>
internal sealed record FindingWording(string What, string? Shows)
{
    /// <summary>The same where a degree was said: its &lt;deg&gt; stands before a plain word (“a little thick”), its &lt;more&gt; before a comparison (“much thicker”).</summary>
    public string? Graded { get; init; }

    /// <summary>The same on one side alone.</summary>
    public string? GradedOnOneSide { get; init; }

    /// <summary>Whether what is there ends in a time, such as “when it was wet”.</summary>
    public bool EndsInTime { get; init; }

    /// <summary>What it does to how much breath a reed takes, where <see cref="Shows"/> says nothing of that: the answer to a reed that is hard to blow.</summary>
    public string? ShowsInEffort { get; init; }

    /// <summary>What is there where it is the sides of the heart and not the heart that were meant; null where that makes no difference.</summary>
    public string? OnHeartSides { get; init; }

    /// <summary>What is there where it is on one side alone; null where that makes no difference. Its &lt;of&gt; is the blade or the tip.</summary>
    public string? OnOneSide { get; init; }

    private static readonly Dictionary<string, FindingWording> ByKind =
        new[] { TipWordings.All, BodyWordings.All, WholeReedWordings.All, StrengthWordings.All }
            .SelectMany(part => part)
            .ToDictionary(pair => pair.Key, pair => pair.Value);

    /// <summary>The wording of a kind; null for what isn't in the catalogue.</summary>
    /// <param name="kind">The kind.</param>
    public static FindingWording? Of(FindingKindId? kind) => kind?.Value is { } id ? ByKind.GetValueOrDefault(id) : null;
}
