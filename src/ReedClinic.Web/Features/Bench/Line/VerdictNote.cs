using Microsoft.Extensions.Localization;
using ReedClinic.Data.Bench;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Phrases;

namespace ReedClinic.Web.Features.Bench.Line;

/// <summary>“Verdict: …” in words that name none: it is kept as a note, looks like a verdict in the log, and is none.</summary>
public static class VerdictNote
{
    /// <summary>Whether an entry is such a note.</summary>
    /// <param name="entry">The entry.</param>
    public static bool Is(BenchEntry? entry) => entry is Note note && OpenVerdict.Says(note.Words);

    /// <summary>What is said of it.</summary>
    /// <param name="view">The reed and its log.</param>
    /// <param name="t">The bench’s words.</param>
    public static string Say(BenchView view, IStringLocalizer<BenchText> t)
    {
        ArgumentNullException.ThrowIfNull(view);
        ArgumentNullException.ThrowIfNull(t);
        return t[view.Log.Verdict is null ? "VerdictNoteOpen" : "VerdictNoteStands"];
    }
}
