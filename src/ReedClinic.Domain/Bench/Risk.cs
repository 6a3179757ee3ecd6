using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Bench;

/// <summary>A risk named before acting.</summary>
public sealed class Risk : BenchEntry
{
    private Risk()
    {
    }

    /// <inheritdoc/>
    public override EntryKind Kind => EntryKind.Risk;

    /// <summary>What may go wrong.</summary>
    public string Words { get; private init; } = "";

    /// <summary>The part of the reed it is about, if any in particular.</summary>
    public Zone? Zone { get; private init; }

    /// <summary>Names a risk.</summary>
    /// <param name="whatMayGoWrong">What may go wrong.</param>
    /// <param name="zone">The part of the reed it is about, if any in particular.</param>
    /// <returns>The entry, or what is wrong with it.</returns>
    public static Outcome<Risk> Of(string? whatMayGoWrong, Zone? zone = null)
    {
        List<Problem> problems =
        [
            .. PlainText.CheckRequired(nameof(Words), whatMayGoWrong, "Say what may go wrong."),
            .. zone is { } given ? Checked.Known(nameof(Zone), given, "Choose a part of the reed.") : [],
        ];
        return Checked.Give(problems, () => new Risk { Words = PlainText.Tidy(whatMayGoWrong) ?? "", Zone = zone });
    }
}
