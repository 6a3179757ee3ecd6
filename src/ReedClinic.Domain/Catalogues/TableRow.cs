using System.Globalization;
using System.Text.RegularExpressions;
using ReedClinic.Domain.Faults;

namespace ReedClinic.Domain.Catalogues;

/// <summary>What is wrong in a file of the catalogue.</summary>
/// <param name="File">The file, without its ending.</param>
/// <param name="Line">The line, from 1; 0 for the file as a whole.</param>
/// <param name="Sentence">One plain sentence.</param>
public readonly record struct CatalogueProblem(string File, int Line, string Sentence)
{
    /// <inheritdoc/>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{File}.tsv, line {Line}: {Sentence}");
}

/// <summary>One line of a file of the catalogue. What can’t be read becomes a problem that names the line, and a harmless value.</summary>
internal sealed partial class TableRow(string file, int line, IReadOnlyDictionary<string, string> cells, CatalogueSources sources, ICollection<CatalogueProblem> problems)
{
    internal int Line => line;

    /// <summary>The cells of a file: comments begin with #, the first other line names the columns, tabs part them.</summary>
    internal static List<TableRow> Read(string file, string text, string[] columns, CatalogueSources sources, ICollection<CatalogueProblem> problems)
    {
        List<TableRow> rows = [];
        var lines = text.ReplaceLineEndings("\n").Split('\n');
        var headed = false;
        for (var at = 0; at < lines.Length; at++)
        {
            var cells = lines[at].Split('\t');
            if (lines[at].Length == 0 || lines[at][0] == '#')
            {
                continue;
            }

            if (!headed)
            {
                headed = true;
                if (!cells.SequenceEqual(columns))
                {
                    problems.Add(new CatalogueProblem(file, at + 1, $"The columns must be {string.Join(", ", columns)}."));
                    return rows;
                }
            }
            else if (cells.Length != columns.Length)
            {
                problems.Add(new CatalogueProblem(file, at + 1, string.Create(CultureInfo.InvariantCulture, $"There must be {columns.Length} cells, and there are {cells.Length}.")));
            }
            else
            {
                rows.Add(new TableRow(file, at + 1, columns.Zip(cells).ToDictionary(pair => pair.First, pair => pair.Second), sources, problems));
            }
        }

        return rows;
    }

    /// <summary>A cell’s words; they must be there.</summary>
    internal string Text(string column)
    {
        var cell = cells[column];
        if (cell is "-" || cell.Trim() != cell || cell.Length == 0)
        {
            Say($"“{column}” needs words, without blanks around them.");
        }

        return cell;
    }

    /// <summary>A cell’s words, or null for “-”.</summary>
    internal string? Maybe(string column) => cells[column] == "-" ? null : Text(column);

    /// <summary>A lasting name.</summary>
    internal string Id(string column)
    {
        var cell = cells[column];
        if (!LastingName().IsMatch(cell))
        {
            Say($"“{cell}” isn’t a name: small letters and hyphens only.");
        }

        return cell;
    }

    /// <summary>Words parted by blanks; none for “-”.</summary>
    internal IReadOnlyList<string> Several(string column)
    {
        var words = cells[column] == "-" ? [] : cells[column].Split(' ');
        if (words.Distinct().Count() != words.Length)
        {
            Say($"“{column}” names something twice.");
        }

        return words;
    }

    /// <summary>How something is known.</summary>
    internal EvidenceMark Mark(string column) => MarkOf(cells[column]);

    /// <summary>A value and its mark: “0.7 default”.</summary>
    internal Marked<T> Marked<T>(string column, Func<string, T?> read, T harmless, string whatItIs)
        where T : struct
    {
        var cell = cells[column];
        var blank = cell.IndexOf(' ', StringComparison.Ordinal);
        if (blank < 0)
        {
            Say($"“{column}” needs {whatItIs} and how it is known.");
            return new Marked<T>(harmless, EvidenceMark.OwnDefault);
        }

        var value = read(cell[..blank]);
        if (value is null)
        {
            Say($"“{cell[..blank]}” isn’t {whatItIs}.");
        }

        return new Marked<T>(value ?? harmless, MarkOf(cell[(blank + 1)..]));
    }

    internal void Say(string sentence) => problems.Add(new CatalogueProblem(file, line, sentence));

    private EvidenceMark MarkOf(string word)
    {
        if (word.StartsWith("published:", StringComparison.Ordinal))
        {
            var names = word["published:".Length..].Split('+');
            foreach (var unknown in names.Where(name => sources.Find(name) is null))
            {
                Say($"“{unknown}” is not among the sources.");
            }

            return EvidenceMark.Published(string.Join("; ", names.Select(name => sources.Find(name) ?? name)));
        }

        switch (word)
        {
            case "practice":
                return EvidenceMark.CommonPractice;
            case "default":
                return EvidenceMark.OwnDefault;
            case "memory":
                return new EvidenceMark(Evidence.FromMemory);
            case "calculated":
                return new EvidenceMark(Evidence.Calculated);
            default:
                Say($"“{word}” doesn’t say how it is known: published:…, memory, practice, calculated or default.");
                return EvidenceMark.OwnDefault;
        }
    }

    [GeneratedRegex("^[a-z]+(-[a-z]+)*$")]
    private static partial Regex LastingName();
}

/// <summary>The published texts that marks name, and which of them were named.</summary>
internal sealed class CatalogueSources
{
    private readonly Dictionary<string, (string Text, int Line)> texts = [];
    private readonly HashSet<string> named = [];

    internal void Add(string id, string text, TableRow row)
    {
        if (!texts.TryAdd(id, (text, row.Line)))
        {
            row.Say($"“{id}” stands here a second time.");
        }
    }

    internal string? Find(string id)
    {
        named.Add(id);
        return texts.TryGetValue(id, out var found) ? found.Text : null;
    }

    internal IEnumerable<(string Id, int Line)> NeverNamed() => texts.Where(one => !named.Contains(one.Key)).Select(one => (one.Key, one.Value.Line));
}
