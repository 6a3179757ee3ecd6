using System.Globalization;

namespace ReedClinic.Documents.Setting;

/// <summary>
/// Breaks a paragraph into lines so that all of them together are as even as can be (the least sum of squared room at their
/// ends), as Knuth and Plass do for a paragraph as a whole, here with a ragged edge and without hyphens of its own.
/// </summary>
public sealed class LineBreaker
{
    private const double ShortShare = 0.15;
    private const double ShortCost = 0.1;
    private const double Tolerance = 0.01;

    // A paragraph is at its best with about as few lines as it can have.
    private const int LinesMore = 3;

    private readonly List<Piece> pieces = [];
    private readonly Func<int, double> widths;
    private readonly double space;

    private LineBreaker(Func<int, double> widths, double space) => (this.widths, this.space) = (widths, space);

    /// <summary>
    /// Breaks a text. Line ends in it stay line ends. Where it is broken between words, a space stays at the line's end: whoever reads
    /// lines one after another, such as a screen reader, has whole words.
    /// </summary>
    /// <param name="text">The text.</param>
    /// <param name="style">How it is set.</param>
    /// <param name="measure">Tells how wide text is.</param>
    /// <param name="widths">The width of each line, counted from 0, in points; above 0.</param>
    /// <param name="narrowest">The narrowest line: a word that is wider is cut to it.</param>
    public static IReadOnlyList<string> Break(string text, TypeStyle style, ITypeMeasure measure, Func<int, double> widths, double narrowest)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(measure);
        ArgumentNullException.ThrowIfNull(widths);
        List<string> lines = [];
        foreach (var part in text.Split('\n'))
        {
            var from = lines.Count;
            var breaker = new LineBreaker(line => widths(line + from), measure.Width(" ", style));
            breaker.Cut(part, style, measure, narrowest);
            lines.AddRange(breaker.Fit());
            lines[^1] += " ";
        }

        lines[^1] = lines[^1][..^1];
        return lines;
    }

    private void Cut(string text, TypeStyle style, ITypeMeasure measure, double narrowest)
    {
        foreach (var word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            var glued = false;
            foreach (var part in AtHyphens(word).SelectMany(part => measure.Width(part, style) <= narrowest ? [part] : Chop(part, style, measure, narrowest)))
            {
                pieces.Add(new(part, measure.Width(part, style), glued));
                glued = true;
            }
        }
    }

    // A word may be parted behind a hyphen or a dash between letters.
    private static IEnumerable<string> AtHyphens(string word)
    {
        var from = 0;
        for (var i = 1; i < word.Length - 1; i++)
        {
            if (word[i] is '-' or '–' or '—' or '/' && char.IsLetter(word[i - 1]) && char.IsLetter(word[i + 1]))
            {
                yield return word[from..(i + 1)];
                from = i + 1;
            }
        }

        yield return word[from..];
    }

    private static IEnumerable<string> Chop(string word, TypeStyle style, ITypeMeasure measure, double narrowest)
    {
        var piece = "";
        var elements = StringInfo.GetTextElementEnumerator(word);
        while (elements.MoveNext())
        {
            var longer = piece + elements.GetTextElement();
            if (piece.Length > 0 && measure.Width(longer, style) > narrowest)
            {
                yield return piece;
                longer = elements.GetTextElement();
            }

            piece = longer;
        }

        yield return piece;
    }

    private List<string> Fit()
    {
        if (pieces.Count == 0)
        {
            return [""];
        }

        // best[k][i]: the least cost of setting the first i pieces in k lines, and where its last line begins.
        var most = Math.Min(pieces.Count, Fewest() + LinesMore);
        var earliest = Earliest(most);
        List<(double Cost, int From)[]> best = [Unreached()];
        best[0][0] = (0, 0);
        var (lines, least) = (0, double.PositiveInfinity);
        for (var k = 0; k < most; k++)
        {
            best.Add(Unreached());
            Extend(best[k], best[k + 1], earliest[k], widths(k));
            if (best[k + 1][^1].Cost < least)
            {
                (lines, least) = (k + 1, best[k + 1][^1].Cost);
            }
        }

        List<string> set = [];
        for (var (k, to) = (lines, pieces.Count); k > 0; k--)
        {
            var from = best[k][to].From;
            set.Insert(0, Line(from, to));
            to = from;
        }

        return set;
    }

    // How many lines there are when each is filled.
    private int Fewest()
    {
        var lines = 0;
        for (var from = 0; from < pieces.Count; lines++)
        {
            var (width, wide) = (widths(lines), pieces[from++].Width);
            while (from < pieces.Count && wide + Added(from) <= width + Tolerance)
            {
                wide += Added(from++);
            }
        }

        return lines;
    }

    // With which piece each line may begin at the earliest, so that the rest has room in the lines that are left.
    private int[] Earliest(int lines)
    {
        var earliest = new int[lines + 1];
        earliest[lines] = pieces.Count;
        for (var k = lines - 1; k >= 0; k--)
        {
            var from = Math.Max(0, earliest[k + 1] - 1);
            var (width, wide) = (widths(k), pieces[from].Width);
            while (from > 0 && wide + Added(from) - pieces[from].Width + pieces[from - 1].Width <= width + Tolerance)
            {
                wide += Added(from) - pieces[from].Width + pieces[from - 1].Width;
                from--;
            }

            earliest[k] = from;
        }

        return earliest;
    }

    // By how much a line becomes wider with a piece that isn't its first.
    private double Added(int piece) => pieces[piece].Width + (pieces[piece].Glued ? 0 : space);

    private void Extend((double Cost, int From)[] before, (double Cost, int From)[] after, int earliest, double width)
    {
        for (var from = earliest; from < pieces.Count; from++)
        {
            if (double.IsPositiveInfinity(before[from].Cost))
            {
                continue;
            }

            var wide = 0.0;
            for (var to = from + 1; to <= pieces.Count; to++)
            {
                wide += to - 1 > from ? Added(to - 1) : pieces[from].Width;
                if (wide > width + Tolerance && to > from + 1)
                {
                    break;
                }

                var cost = before[from].Cost + Cost(wide, width, last: to == pieces.Count);
                if (cost < after[to].Cost)
                {
                    after[to] = (cost, from);
                }
            }
        }
    }

    private static double Cost(double wide, double width, bool last)
    {
        if (last)
        {
            return wide < ShortShare * width ? ShortCost : 0;
        }

        var room = Math.Max(0, width - wide) / width;
        return room * room;
    }

    private string Line(int from, int to) =>
        string.Concat(Enumerable.Range(from, to - from).Select(i => (i > from && !pieces[i].Glued ? " " : "") + pieces[i].Text)) + (to < pieces.Count && !pieces[to].Glued ? " " : "");

    private (double Cost, int From)[] Unreached()
    {
        var all = new (double, int)[pieces.Count + 1];
        Array.Fill(all, (double.PositiveInfinity, 0));
        return all;
    }

    private readonly record struct Piece(string Text, double Width, bool Glued);
}
