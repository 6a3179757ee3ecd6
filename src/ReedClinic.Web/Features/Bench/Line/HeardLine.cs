using ReedClinic.Data.Bench;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Advice;
using ReedClinic.Domain.Bench.Phrases;
using ReedClinic.Domain.Catalogues;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.Pitch;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Web.Features.Bench.Line;

/// <summary>One thing that was understood in a line.</summary>
/// <param name="Entry">The entry that it makes.</param>
/// <param name="Doubts">What isn't certain about it, in words.</param>
public sealed record HeardEntry(BenchEntry Entry, IReadOnlyList<string> Doubts)
{
    /// <summary>The work that it would record; null when it records none.</summary>
    public PlannedWork? Planned => Entry is Adjustment work ? new PlannedWork(work.AdjustmentKind, work.Place, work.Amount) : null;
}

/// <summary>
/// What a line comes to, before it is sent and when it is: the entries that were understood, and a note of every word that wasn't.
/// Nothing that was typed is lost.
/// </summary>
/// <param name="Entries">What it will record, in order.</param>
/// <param name="Kept">The words that nothing was understood of; they are kept as a note.</param>
public sealed record HeardLine(IReadOnlyList<HeardEntry> Entries, string? Kept)
{
    private static readonly char[] Between = [' ', '\t', '\u00A0', ',', ';', '.', ':', '…', '-', '–', '—', '!', '"', '“', '”', '(', ')'];

    /// <summary>An empty line.</summary>
    public static HeardLine Nothing { get; } = new([], null);

    /// <summary>Everything that it records, the note of what wasn't understood last.</summary>
    public IReadOnlyList<BenchEntry> All => Kept is null
        ? [.. Entries.Select(heard => heard.Entry)]
        : [.. Entries.Select(heard => heard.Entry), Made(Note.Of(Kept))];

    /// <summary>The log as it will stand when one of its entries is said: what comes before that in the line is recorded then.</summary>
    /// <param name="at">Which entry, from 0.</param>
    /// <param name="log">The reed's log before the line.</param>
    public BenchLog Before(int at, BenchLog log) => SameBreath.After(log, [.. Entries.Take(at).Select(heard => heard.Entry)]);

    /// <summary>The entry that it puts right, instead of recording anything new; null when it records.</summary>
    public BenchFact? Mends { get; init; }

    /// <summary>The entry that it takes back, instead of recording anything; null when it records.</summary>
    public BenchFact? TakesBack { get; init; }

    /// <summary>What it takes back besides: all that was said in one breath goes together. The newest first.</summary>
    public IReadOnlyList<BenchFact> TakesBackToo { get; init; } = [];

    /// <summary>What was taken back out of turn and stands again by it, instead of recording anything; null when it records.</summary>
    public BenchFact? BringsBack { get; init; }

    /// <summary>The end of what it puts right, takes back or brings back, as it stood when the line was heard; null when it records.</summary>
    public EntryId? Meant => (Mends ?? TakesBack ?? BringsBack)?.Tail;

    /// <summary>The words that it was heard from, where they put right, take back or bring back: they mean that entry and none that is said meanwhile.</summary>
    public string? From { get; init; }

    /// <summary>True when it says that the work stops here.</summary>
    public bool Stops => Entries.Any(heard => heard.Entry is Stopped);

    /// <summary>What of it has a place on the drawing.</summary>
    public IReadOnlyList<ReedMark> Marks => [.. Entries.Select(heard => ReedMarks.Of(heard.Entry)).OfType<ReedMark>()];

    /// <summary>Hears a line.</summary>
    /// <param name="text">What was typed.</param>
    /// <param name="log">What stands on this reed.</param>
    /// <param name="tuning">What the student tunes to.</param>
    /// <param name="own">What the studio added; where the line says such a name it is that.</param>
    public static HeardLine Of(string? text, BenchLog log, Tuning tuning, OwnKinds? own = null)
    {
        if (PlainText.Tidy(text) is not { } line)
        {
            return Nothing;
        }

        var context = new PhraseContext(log, tuning);
        List<(HeardEntry One, TextSpan Span)> heard = [];
        List<string> lost = [];
        var from = 0;
        foreach (var piece in (own ?? OwnKinds.None).HearWithin(line))
        {
            from = Math.Max(from, line.IndexOf(piece.Words, from, StringComparison.Ordinal));
            if (piece.Entry is { } known)
            {
                heard.Add((new HeardEntry(known, []), new TextSpan(from, piece.Words.Length)));
            }
            else
            {
                Read(piece.Words, from, context, heard, lost);
            }

            from = Math.Min(from + piece.Words.Length, line.Length);
        }

        if (heard.Count == 0)
        {
            return new([], line);
        }

        List<HeardEntry> entries = [.. TypedWords.Beside(line, heard)];
        return lost.Count == 0 || Joined(line, entries, lost) ? new(entries, null) : new(entries, string.Join(" … ", lost));
    }

    // Beside a remark what is left over is part of it, in the order in which it was typed: one remark with all its words.
    private static bool Joined(string line, List<HeardEntry> heard, List<string> lost)
    {
        var at = heard.FindLastIndex(one => one.Entry is Note);
        if (at < 0 || Note.Of(string.Join(" … ", lost.Append(((Note)heard[at].Entry).Words.TrimEnd(Between)).OrderBy(words => line.IndexOf(words, StringComparison.Ordinal)))) is not Outcome<Note>.Done(var whole))
        {
            return false;
        }

        heard[at] = heard[at] with { Entry = whole.AsSaid(heard[at].Entry.Said) };
        return true;
    }

    private static void Read(string words, int at, PhraseContext context, List<(HeardEntry One, TextSpan Span)> heard, List<string> lost)
    {
        var reading = PhraseReader.Read(words, context);
        lost.AddRange(reading.Kept);
        foreach (var read in reading.Entries)
        {
            if (read.ToEntry(context) is Outcome<BenchEntry>.Done(var entry))
            {
                heard.Add((new HeardEntry(entry, [.. read.Doubts.Select(doubt => doubt.Words)]), read.Span with { Start = at + read.Span.Start }));
            }
            else
            {
                lost.Add(Cut(words, read.Span));
            }
        }
    }

    /// <summary>What keeps each entry of it from being written down, in order; a crow that is said earlier in the line counts.</summary>
    /// <param name="view">The reed and its log.</param>
    public IReadOnlyList<Problem?> Wanted(BenchView view)
    {
        ArgumentNullException.ThrowIfNull(view);
        var crow = SafeChanges.CrowBefore(view.Log, view.Batch.CrowTarget);
        List<Problem?> wanted = [];
        foreach (var entry in All)
        {
            crow = entry is Test { TestKind: TestKind.Crow, Pitch: { } pitch } ? pitch.Against(view.Batch.CrowTarget) : crow;
            wanted.Add(Agreement.Wanted(view.Reed, entry, crow));
        }

        return wanted;
    }

    /// <summary>The same line, with what is said of the student’s consent in each adjustment that wants it.</summary>
    /// <param name="view">The reed and its log.</param>
    /// <param name="agreed">Whether it was agreed; false where it was done without.</param>
    public HeardLine Agreed(BenchView view, bool agreed) =>
        this with { Entries = [.. Entries.Zip(Wanted(view), (heard, wanted) => wanted is null ? heard : heard with { Entry = Agreed(heard.Entry, agreed) })] };

    /// <summary>The same work with what is said of the student’s consent.</summary>
    /// <param name="entry">Any entry; only work wants consent.</param>
    /// <param name="agreed">Whether it was agreed.</param>
    public static BenchEntry Agreed(BenchEntry entry, bool agreed) => entry is Adjustment work
        ? Made(Adjustment.Of(work.AdjustmentKind, work.Place, work.Amount, work.ForFindingId, work.ForTheSakeOf, Agreement.With(OwnId.Remark(work.AdjustmentKind.Value, work.Words), agreed))).AsSaid(work.Said)
        : entry;

    private static string Cut(string text, TextSpan span) => text.Substring(span.Start, span.Length).Trim(Between);

    private static T Made<T>(Outcome<T> made) =>
        made is Outcome<T>.Done(var value) ? value : throw new InvalidOperationException("What stands already can be said again.");
}
