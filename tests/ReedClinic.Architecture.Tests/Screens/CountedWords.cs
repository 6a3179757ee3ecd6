using System.Text.RegularExpressions;
using System.Xml.Linq;
using ReedClinic.Architecture.Tests.Reading;

namespace ReedClinic.Architecture.Tests.Screens;

/// <summary>
/// Words for several things that stand after a number: the same file has words for one of them, so that no page says “1 reeds”.
/// The words for one have the same key with One or 1 instead of Many, or beside it.
/// </summary>
public static partial class CountedWords
{
    public static IEnumerable<string> In(IEnumerable<Source> files, IReadOnlyDictionary<string, string> reasons) =>
        from file in files
        where file.Extension == ".resx"
        let keys = XDocument.Parse(file.Text).Descendants("data").ToDictionary(data => (string)data.Attribute("name")!, data => (string?)data.Element("value") ?? "")
        from pair in keys
        where Several().IsMatch(pair.Value) && !reasons.ContainsKey(pair.Key) && !HasOne(pair.Key, keys)
        select $"{file.Path}: \"{pair.Key}\" has no words for one: {Several().Match(pair.Value).Value}";

    private static bool HasOne(string key, Dictionary<string, string> keys)
    {
        var stem = key.EndsWith("Many", StringComparison.Ordinal) ? key[..^4] : key;
        return keys.ContainsKey(stem + "One") || keys.ContainsKey(stem + "1");
    }

    [GeneratedRegex(@"\{\d\} (reeds|batches|questions|letters|descriptions|entries|years|days|hours|minutes|seconds|times|things|tabs|copies|mails|codes|cents|characters|passes|steps|strokes|mails|links|people|students)\b")]
    private static partial Regex Several();
}
