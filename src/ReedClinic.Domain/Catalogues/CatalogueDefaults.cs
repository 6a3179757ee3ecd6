using System.Globalization;
using ReedClinic.Domain.Faults;

namespace ReedClinic.Domain.Catalogues;

/// <summary>The numbers behind the words of the catalogue’s files. Each is this program’s own default.</summary>
public sealed record CatalogueDefaults
{
    private readonly Dictionary<(string Of, string Word), Marked<double>> numbers;

    internal CatalogueDefaults(Dictionary<(string Of, string Word), Marked<double>> numbers) => this.numbers = numbers;

    /// <summary>How likely a sign that is only suspected turns up with none of its causes.</summary>
    public Marked<double> Suspected => numbers.GetValueOrDefault(("unasked", "suspected"));

    /// <summary>How likely a sign that is there, but only “a little” so, turns up with none of its causes.</summary>
    public Marked<double> ALittle => numbers.GetValueOrDefault(("unasked", "a-little"));

    /// <summary>The share of a link’s strength that counts when a student says that a sign isn’t there.</summary>
    public Marked<double> UnsureDenial => numbers.GetValueOrDefault(("share", "unsure-denial"));

    /// <summary>How likely a cause brings a sign about that belongs to it so closely.</summary>
    /// <param name="belonging">How closely.</param>
    public Marked<double> StrengthOf(Belonging belonging) => Of("strength", belonging switch
    {
        Belonging.Itself => "itself",
        Belonging.Typical => "typical",
        Belonging.Behind => "behind",
        _ => "possible",
    }) ?? default;

    /// <summary>A weight with which the next adjustments are ranked; nothing for a word that isn’t there.</summary>
    internal Marked<double> Next(string word) => Of("next", word) ?? new Marked<double>(0, EvidenceMark.OwnDefault);

    internal Marked<double>? Of(string of, string word) => numbers.TryGetValue((of, word), out var found) ? found : null;

    internal static CatalogueDefaults Read(IEnumerable<TableRow> rows)
    {
        Dictionary<(string, string), Marked<double>> numbers = [];
        foreach (var row in rows)
        {
            row.Text("why");
            if (!numbers.TryAdd((row.Text("of"), row.Id("word")), row.Marked("value", ReadPart, 0.5, "a number between 0 and 1")))
            {
                row.Say("This word stands here a second time.");
            }
        }

        return new CatalogueDefaults(numbers);
    }

    private static double? ReadPart(string text) =>
        double.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var value) && value is > 0 and < 1 ? value : null;
}
