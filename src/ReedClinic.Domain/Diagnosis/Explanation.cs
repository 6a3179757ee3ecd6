using System.Globalization;
using ReedClinic.Domain.Catalogues;
using ReedClinic.Domain.Faults;

namespace ReedClinic.Domain.Diagnosis;

/// <summary>What one piece of evidence does to one cause.</summary>
/// <param name="Sign">The sign.</param>
/// <param name="Present">True when it is there, false when it was looked for and isn’t.</param>
/// <param name="Ratio">The cause’s odds with this evidence over its odds when this evidence alone is taken out; above 1 it speaks for the cause.</param>
/// <param name="Words">The same in a plain sentence.</param>
/// <param name="Mark">How it is known that sign and cause belong together; null where it speaks by way of other causes only.</param>
public sealed record Reason(Sign Sign, bool Present, double Ratio, string Words, EvidenceMark? Mark)
{
    private const double Least = 0.05;

    /// <summary>True when it moves the odds by more than a twentieth.</summary>
    public bool Tells => Math.Abs(Math.Log(Ratio)) > Least;

    internal static Reason Of(Sign sign, bool present, double ratio, CauseLink? link)
    {
        var fact = present ? $"{char.ToUpperInvariant(sign.Name[0])}{sign.Name[1..]}" : $"Not there: {sign.Name}";
        var way = link is null ? ", by way of what else may be behind it" : string.Empty;
        var odds = $"{Times(Math.Max(ratio, 1 / ratio))} {(ratio >= 1 ? "likelier" : "less likely")} for that{way}";
        return new Reason(sign, present, ratio, $"{fact}; {odds}.", link?.Mark);
    }

    private static string Times(double ratio) => ratio switch
    {
        < 1.5 => "a little",
        >= 1000 => "more than a thousand times",
        _ => string.Create(CultureInfo.InvariantCulture, $"about {(ratio < 9.5 ? Math.Round(ratio * 2) / 2 : Math.Round(ratio)):0.#} times"),
    };
}

/// <summary>Why a cause is as likely as it is.</summary>
/// <param name="Cause">The cause.</param>
/// <param name="Chance">How likely it is.</param>
/// <param name="Reasons">What speaks for and against it, the weightiest first.</param>
public sealed record Explanation(Cause Cause, double Chance, IReadOnlyList<Reason> Reasons)
{
    /// <summary>What the odds rest on.</summary>
    public const string Footing = "How often a cause is met and how strongly it shows itself are this program’s own defaults, not measurements.";

    /// <summary>What speaks for it.</summary>
    public IEnumerable<Reason> For => Reasons.Where(reason => reason.Ratio > 1);

    /// <summary>What speaks against it.</summary>
    public IEnumerable<Reason> Against => Reasons.Where(reason => reason.Ratio < 1);

    /// <summary>The published texts behind it, each once: those of the cause and those of the signs that tell.</summary>
    public IReadOnlyList<string> Sources =>
        [.. Reasons.Select(reason => reason.Mark).Append(Cause.Mark).Select(mark => mark?.Source).OfType<string>().SelectMany(text => text.Split("; ")).Distinct()];
}
