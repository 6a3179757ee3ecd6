namespace ReedClinic.Domain.Bench.Phrases.Words;

/// <summary>One spelling for words that are spelled in several ways.</summary>
internal static class Spelling
{
    private static readonly Dictionary<string, string> Other = new()
    {
        ["center"] = "centre",
        ["centers"] = "centres",
        ["centered"] = "centred",
        ["gray"] = "grey",
        ["mold"] = "mould",
        ["millimeter"] = "millimetre",
        ["millimeters"] = "millimetres",
        ["mms"] = "mm",
        ["color"] = "colour",
        ["favor"] = "favour",
        ["labor"] = "labour",
        ["neighbor"] = "neighbour",
        ["caliper"] = "calliper",
        ["calipers"] = "callipers",
        ["plack"] = "plaque",
        ["plaq"] = "plaque",
        ["flavor"] = "flavour",
        ["vigor"] = "vigour",
        ["fiber"] = "fibre",
        ["fibers"] = "fibres",
        ["skillful"] = "skilful",
        ["thru"] = "through",
        ["alright"] = "right",
        ["ok"] = "okay",
        ["lite"] = "light",
        ["tho"] = "though",
        ["till"] = "until",
        ["upperblade"] = "upper",
        ["lowerblade"] = "lower",
        ["tyed"] = "tied",
        ["equalize"] = "equalise",
        ["equalized"] = "equalised",
        ["whilst"] = "while",
        ["amongst"] = "among",
        ["plowed"] = "ploughed",
        ["gage"] = "gauge",
        ["realized"] = "realised",
        ["recognize"] = "recognise",
        ["stabilized"] = "stabilised",
        ["uneaven"] = "uneven",
        ["responce"] = "response",
        ["symetrical"] = "symmetrical",
        ["assymetrical"] = "asymmetrical",
    };

    internal static string Of(string word) => Other.GetValueOrDefault(word, word);
}
