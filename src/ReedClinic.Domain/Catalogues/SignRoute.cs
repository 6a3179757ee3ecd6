using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Intake;

namespace ReedClinic.Domain.Catalogues;

/// <summary>One way in which the records tell of a sign.</summary>
public abstract record SignRoute
{
    private SignRoute()
    {
    }

    /// <summary>A word of a test at the bench: the sign holds at these steps and doesn’t at the others.</summary>
    /// <param name="Test">The test.</param>
    /// <param name="Steps">Indices on its scale.</param>
    public sealed record ByTest(TestKind Test, IReadOnlyList<int> Steps) : SignRoute;

    /// <summary>The pitch told with a test: the sign holds on one side of what is aimed at.</summary>
    /// <param name="Test">The test.</param>
    /// <param name="Above">True for above, false for below.</param>
    public sealed record ByPitch(TestKind Test, bool Above) : SignRoute;

    /// <summary>A finding: there, or looked for and not there.</summary>
    /// <param name="Finding">The kind.</param>
    public sealed record ByFinding(FindingKindId Finding) : SignRoute;

    /// <summary>A strength that speaks against the sign.</summary>
    /// <param name="Finding">The kind.</param>
    public sealed record ByStrength(FindingKindId Finding) : SignRoute;

    /// <summary>What the student marked.</summary>
    /// <param name="Aspect">The scale.</param>
    /// <param name="Above">True for its plus side, false for its minus side.</param>
    public sealed record ByComplaint(Aspect Aspect, bool Above) : SignRoute;

    /// <summary>Reads the form in which the catalogue’s file writes it, such as <c>test:Opening=3,4</c>.</summary>
    /// <param name="text">The form.</param>
    /// <returns>The route; null for nonsense.</returns>
    public static SignRoute? Read(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var colon = text.IndexOf(':', StringComparison.Ordinal);
        var (kind, rest) = colon < 0 ? (text, string.Empty) : (text[..colon], text[(colon + 1)..]);
        return kind switch
        {
            "test" => ReadTest(rest),
            "pitch" => Side(rest) is { } pitch && Enum.TryParse<TestKind>(rest[..^1], ignoreCase: true, out var test) && TestScale.Of(test).TakesPitch
                ? new ByPitch(test, pitch) : null,
            "finding" => Known(rest, strength: false) is { } finding ? new ByFinding(finding) : null,
            "!finding" => Known(rest, strength: true) is { } strength ? new ByStrength(strength) : null,
            "complaint" => Side(rest) is { } side && Enum.TryParse<Aspect>(rest[..^1], out var aspect) ? new ByComplaint(aspect, side) : null,
            _ => null,
        };
    }

    private static ByTest? ReadTest(string text)
    {
        var parts = text.Split('=');
        if (parts.Length != 2 || !Enum.TryParse<TestKind>(parts[0], out var test) || !Enum.IsDefined(test))
        {
            return null;
        }

        var steps = parts[1].Split(',').Select(step => int.TryParse(step, out var index) ? index : -1).ToList();
        return steps.All(step => step >= 0 && step < TestScale.Of(test).Steps.Count && step != TestScale.Of(test).Good) ? new ByTest(test, steps) : null;
    }

    private static FindingKindId? Known(string id, bool strength) =>
        FindingCatalogue.Find(new FindingKindId(id)) is { } kind && kind.Usually == (strength ? FindingCharacter.Strength : FindingCharacter.Fault)
            ? kind.Id : null;

    private static bool? Side(string text) => text.Length < 2 ? null : text[^1] switch { '+' => true, '-' => false, _ => null };
}
