using System.Text.RegularExpressions;
using ReedClinic.Domain.Letters.Wordings;

namespace ReedClinic.Domain.Letters;

/// <summary>Words of the trade that stand in a list of names, and what they mean, as letters say it.</summary>
public static class Glossary
{
    /// <summary>The words that the names say, each once.</summary>
    /// <param name="names">The names, such as “spine whole”.</param>
    public static IReadOnlyList<(string Word, string Means)> Of(IEnumerable<string> names)
    {
        List<string> said = [.. names.Select(name => "the " + Prose.Inside(name))];
        return
        [
            .. TradeWordings.All.Where(word => !word.IsSynonym && said.Exists(name => Regex.IsMatch(name, word.Pattern, RegexOptions.CultureInvariant)))
                .DistinctBy(word => word.Name).Select(word => (word.Name, Pattern.Fill(word.Alone ?? word.Means, _ => 0, past: false))),
        ];
    }
}
