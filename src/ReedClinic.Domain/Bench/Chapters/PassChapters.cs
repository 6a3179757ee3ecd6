using System.Globalization;
using System.Text;
using ReedClinic.Domain.Bench.Story;

namespace ReedClinic.Domain.Bench.Chapters;

/// <summary>One chapter: where it begins in the video, and what it is called.</summary>
/// <param name="Start">From the beginning of the video.</param>
/// <param name="Title">One line.</param>
public sealed record Chapter(TimeSpan Start, string Title);

/// <summary>
/// The passes of a bench log as chapters of a video that was made meanwhile: as a W3C WebVTT file, and as lines to paste.
/// </summary>
/// <remarks>
/// The clock times of the log and one zero point (the clock time at which the video begins) give every start. What was said before
/// the video began is left out, but for the pass that was going on: it is the first chapter, at zero. A pass begins with its first
/// adjustment, the arrival with the first thing that was said at all.
/// </remarks>
public static class PassChapters
{
    /// <summary>The shortest a chapter lasts in the file, so that no cue ends before it begins.</summary>
    public static readonly TimeSpan Shortest = TimeSpan.FromMilliseconds(1);

    /// <summary>How long the last chapter lasts when nobody says how long the video is. It is this program’s own default.</summary>
    public static readonly TimeSpan LastUsually = TimeSpan.FromMinutes(5);

    /// <summary>What was worked so long after a video began, or later, belongs to another one. It is this program’s own default.</summary>
    public static readonly TimeSpan AnotherVideo = TimeSpan.FromHours(12);

    /// <summary>The passes that were worked when a video that began then had surely ended: another day’s, with the clock time at which each began.</summary>
    /// <param name="log">The reed’s log.</param>
    /// <param name="zero">The clock time at which the video begins.</param>
    /// <returns>In order; none where all of the work lies within one video.</returns>
    public static IReadOnlyList<(DateTimeOffset Began, string Title)> Later(BenchLog log, DateTimeOffset zero)
    {
        ArgumentNullException.ThrowIfNull(log);
        return [.. log.Passes.Where(pass => pass.Facts.Count > 0).Select(pass => (Began: Began(pass), Title: OneLine(Title(pass)))).Where(pass => pass.Began - zero >= AnotherVideo).OrderBy(pass => pass.Began)];
    }

    /// <summary>The chapters of a log.</summary>
    /// <param name="log">The reed’s log.</param>
    /// <param name="zero">The clock time at which the video begins.</param>
    /// <param name="ends">How long the video is, if it is known: what lies behind its end is left out.</param>
    /// <returns>Chapters in order, no two at the same time.</returns>
    public static IReadOnlyList<Chapter> Of(BenchLog log, DateTimeOffset zero, TimeSpan? ends = null)
    {
        ArgumentNullException.ThrowIfNull(log);
        var starts = log.Passes.Where(pass => pass.Facts.Count > 0)
            .Select(pass => (At: Cut(Began(pass) - zero), Title: Title(pass)))
            .Where(pass => pass.At < AnotherVideo).OrderBy(pass => pass.At).ToList();
        var during = starts.FindLastIndex(pass => pass.At <= TimeSpan.Zero);
        return
        [
            .. starts.Skip(Math.Max(0, during))
                .Select(pass => new Chapter(pass.At < TimeSpan.Zero ? TimeSpan.Zero : pass.At, pass.Title))
                .Where(chapter => ends is not { } end || chapter.Start < end)
                .GroupBy(chapter => chapter.Start).Select(group => group.Last()),
        ];
    }

    /// <summary>
    /// The chapters as a WebVTT file (W3C, WebVTT: The Web Video Text Tracks Format, section 4): the header, an empty line, then
    /// cues with a number, timings as hh:mm:ss.ttt, and one line of text. Each chapter lasts until the next one.
    /// </summary>
    /// <param name="chapters">The chapters, in order.</param>
    /// <param name="ends">How long the video is, if it is known.</param>
    public static string ToWebVtt(IReadOnlyList<Chapter> chapters, TimeSpan? ends = null)
    {
        ArgumentNullException.ThrowIfNull(chapters);
        var text = new StringBuilder("WEBVTT\n");
        for (var index = 0; index < chapters.Count; index++)
        {
            var start = Cut(chapters[index].Start);
            var until = index + 1 < chapters.Count ? chapters[index + 1].Start : ends ?? start + LastUsually;
            var end = Cut(until) > start ? Cut(until) : start + Shortest;
            text.Append(CultureInfo.InvariantCulture, $"\n{index + 1}\n{Stamp(start)} --> {Stamp(end)}\n{Escape(chapters[index].Title)}\n");
        }

        return text.ToString();
    }

    /// <summary>The chapters as plain lines to paste: “0:00 As it arrived”, with hours once the video is that long.</summary>
    /// <param name="chapters">The chapters, in order.</param>
    public static string ToLines(IReadOnlyList<Chapter> chapters)
    {
        ArgumentNullException.ThrowIfNull(chapters);
        var hours = chapters.Any(chapter => chapter.Start >= TimeSpan.FromHours(1));
        return string.Join('\n', chapters.Select(chapter => $"{Clock(chapter.Start, hours)} {OneLine(chapter.Title)}"));
    }

    private static DateTimeOffset Began(BenchPass pass) => pass.Facts.Min(fact => fact.Chain[0].RecordedAt);

    private static string Clock(TimeSpan time, bool hours) => hours
        ? string.Create(CultureInfo.InvariantCulture, $"{(int)time.TotalHours}:{time:mm\\:ss}")
        : string.Create(CultureInfo.InvariantCulture, $"{(int)time.TotalMinutes}:{time:ss}");

    private static string Title(BenchPass pass)
    {
        var work = StoryWork.Say([.. pass.Adjustments]);
        return pass.Number == 0 ? "As it arrived"
            : work.Count == 0 ? string.Create(CultureInfo.InvariantCulture, $"Pass {pass.Number}")
            : string.Create(CultureInfo.InvariantCulture, $"Pass {pass.Number}: {string.Join(", ", work)}");
    }

    private static TimeSpan Cut(TimeSpan time) => new(time.Ticks - (time.Ticks % TimeSpan.TicksPerMillisecond));

    private static string Stamp(TimeSpan time) =>
        string.Create(CultureInfo.InvariantCulture, $"{(int)time.TotalHours:00}:{time:mm\\:ss\\.fff}");

    // A cue’s text has no line break of its own here (an empty line would end it), and neither “-->” nor a bare & or < or >.
    private static string Escape(string title) => OneLine(title)
        .Replace("&", "&amp;", StringComparison.Ordinal)
        .Replace("<", "&lt;", StringComparison.Ordinal)
        .Replace(">", "&gt;", StringComparison.Ordinal);

    private static string OneLine(string title)
    {
        var words = new string([.. title.Select(letter => char.IsControl(letter) || letter is '\u2028' or '\u2029' ? ' ' : letter)]);
        var line = string.Join(' ', words.Split(' ', StringSplitOptions.RemoveEmptyEntries));
        return line.Length == 0 ? "–" : line;
    }
}
