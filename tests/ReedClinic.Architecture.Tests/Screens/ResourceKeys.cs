using System.Text.RegularExpressions;
using System.Xml.Linq;
using ReedClinic.Architecture.Tests.Reading;

namespace ReedClinic.Architecture.Tests.Screens;

/// <summary>Words of a screen live in its feature's resources: each key that is asked for is there, each that is there is asked for.</summary>
public sealed partial class ResourceKeys
{
    private readonly Dictionary<string, HashSet<string>> _keys;
    private readonly List<(string Marker, string Key, bool IsPattern, string Where)> _asked = [];
    private readonly HashSet<string> _literals = [];

    public ResourceKeys(IEnumerable<Source> files)
    {
        var all = files.ToList();
        _keys = all.Where(file => file.Extension == ".resx").ToDictionary(file => Path.GetFileNameWithoutExtension(file.Name), KeysOf);
        foreach (var file in all.Where(file => file.Extension is ".razor" or ".cs"))
        {
            Read(file);
        }
    }

    public IEnumerable<string> Missing() =>
        from ask in _asked
        where !_keys.TryGetValue(ask.Marker, out var known) || !known.Any(key => Meets(ask, key))
        select $"{ask.Where} asks {ask.Marker} for \"{ask.Key}\"";

    public IEnumerable<string> Idle() =>
        from marker in _keys
        from key in marker.Value
        where !_literals.Contains(key) && !_asked.Any(ask => ask.Marker == marker.Key && Meets(ask, key))
        select $"{marker.Key}.resx has \"{key}\", which nothing asks for";

    private static bool Meets((string Marker, string Key, bool IsPattern, string Where) ask, string key) =>
        ask.IsPattern ? Regex.IsMatch(key, ask.Key) : ask.Key == key;

    private static HashSet<string> KeysOf(Source file) =>
        [.. XDocument.Parse(file.Text).Descendants("data").Select(data => (string?)data.Attribute("name")).OfType<string>()];

    private void Read(Source file)
    {
        var markers = Localizer().Matches(file.Text).GroupBy(match => match.Groups["name"].Value)
            .ToDictionary(group => group.Key, group => group.First().Groups["marker"].Value);
        foreach (Match match in Asked().Matches(file.Text))
        {
            if (markers.TryGetValue(match.Groups["name"].Value, out var marker))
            {
                var goesOn = match.Groups["plus"].Success; // T["Stage" + stage]
                var isPattern = goesOn || match.Groups["dollar"].Length > 0;
                var key = match.Groups["key"].Value + (goesOn ? "{}" : "");
                _asked.Add((marker, isPattern ? Pattern(key) : key, isPattern, $"{file.Path}:{file.LineOf(match.Index)}"));
            }
        }

        // A key may be chosen in a switch or a table and looked up later: the literal is enough to call it used.
        _literals.UnionWith(Literal().Matches(file.Text).Select(match => match.Groups[1].Value));
    }

    private static string Pattern(string interpolated) =>
        "^" + string.Join(".+", Hole().Split(interpolated).Select(Regex.Escape)) + "$";

    [GeneratedRegex(@"IStringLocalizer<(?<marker>\w+)>\s+(?<name>\w+)")]
    private static partial Regex Localizer();

    [GeneratedRegex(@"\b(?<name>\w+)\[(?<dollar>\$?)""(?<key>[^""]+)""(?<plus>\s*\+)?")]
    private static partial Regex Asked();

    [GeneratedRegex(@"""(\w+)""")]
    private static partial Regex Literal();

    [GeneratedRegex(@"\{[^}]*\}")]
    private static partial Regex Hole();
}
