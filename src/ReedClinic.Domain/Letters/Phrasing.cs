using System.Text;
using System.Text.RegularExpressions;
using ReedClinic.Domain.Letters.Wordings;

namespace ReedClinic.Domain.Letters;

/// <summary>
/// Chooses between ways of saying the same thing, so that letters don't read as if a machine had written them. The choice
/// depends on the batch alone: the same letter drafted twice is the same letter.
/// </summary>
/// <remarks>No sentence is said twice in a letter while there is another way. So one of these is made for each letter.</remarks>
/// <param name="seed">What the choice depends on.</param>
/// <param name="asked">How often other words were asked for.</param>
internal sealed partial class Phrasing(Guid seed, int asked = 0)
{
    private const int MostTries = 12;

    private readonly HashSet<string> _said = [];

    /// <summary>What was said, by its places, in order: in other words it is the same.</summary>
    internal List<string> Statements { get; } = [];

    /// <summary>A sentence, in one of several ways.</summary>
    /// <param name="place">Where it is said; another place makes another choice.</param>
    /// <param name="turn">How often it was said before: neighbours never get the same way while there are others.</param>
    /// <param name="ways">The ways, as <see cref="Pattern"/> reads them.</param>
    /// <param name="slots">What is filled in.</param>
    public string Say(string place, int turn, IReadOnlyList<string> ways, params (string Name, string Value)[] slots)
    {
        Statements.Add(place);
        var sentence = Prose.Capital(Clause(place, turn, ways, false, slots));
        for (var again = 1; again < MostTries && (_said.Contains(sentence) || Stumbles(sentence)); again++)
        {
            sentence = Prose.Capital(Clause(Numbered(place, again), turn, ways, false, slots));
        }

        _said.Add(sentence);
        return sentence;
    }

    /// <summary>The end of a sentence, chosen so that it doesn’t stumble over what stands before it.</summary>
    /// <param name="before">What stands before it.</param>
    /// <param name="place">Where it is said.</param>
    /// <param name="turn">How often it was said before.</param>
    /// <param name="ways">The ways.</param>
    /// <param name="slots">What is filled in.</param>
    public string End(string before, string place, int turn, IReadOnlyList<string> ways, params (string Name, string Value)[] slots)
    {
        var end = Clause(place, turn, ways, false, slots);
        for (var again = 1; again < MostTries && Stumbles(before + end); again++)
        {
            end = Clause(Numbered(place, again), turn, ways, false, slots);
        }

        return end;
    }

    // “I found that …, and that …” is heavy to read; what somebody typed stands in quotation marks and is left alone.
    private static bool Stumbles(string sentence) => That().Count(Aside().Replace(sentence, "")) > 1;

    [GeneratedRegex(@"(?i)\bthat\b")]
    private static partial Regex That();

    [GeneratedRegex("“[^”]*”| \\([^)]*\\)")]
    private static partial Regex Aside();

    /// <summary>The same for a part of a sentence.</summary>
    /// <param name="place">Where it is said.</param>
    /// <param name="turn">How often it was said before.</param>
    /// <param name="ways">The ways.</param>
    /// <param name="past">Whether it was so and is so no longer.</param>
    /// <param name="slots">What is filled in.</param>
    public string Clause(
        string place, int turn, IReadOnlyList<string> ways, bool past, params (string Name, string Value)[] slots)
    {
        var way = ways[(int)((Hash(place) + (uint)turn) % (uint)ways.Count)];
        var choices = 0;
        return Pattern.Fill(way, among => (int)(Hash(Numbered(Numbered(place, turn), ++choices)) % (uint)among), past, slots);
    }

    /// <summary>True in one of so many letters, and then in whatever words.</summary>
    /// <param name="place">What is said or left out.</param>
    /// <param name="outOf">How many.</param>
    public bool OnceIn(string place, int outOf) => Hash(place, 0) % (uint)outOf == 0;

    /// <summary>Some of several things, in an order of this letter's own, and in whatever words.</summary>
    /// <typeparam name="T">What they are.</typeparam>
    /// <param name="place">Where they are said.</param>
    /// <param name="most">The most that are taken.</param>
    /// <param name="things">The things.</param>
    public IReadOnlyList<T> Some<T>(string place, int most, IEnumerable<T> things) =>
        [.. things.Select((thing, index) => (Thing: thing, Rank: Hash(Numbered(place, index), 0))).OrderBy(pair => pair.Rank).Take(most).Select(pair => pair.Thing)];

    private static string Numbered(string place, int number) => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{place}#{number}");

    // FNV-1a with a last stir: the same on every machine, which string.GetHashCode is not.
    private uint Hash(string place) => Hash(place, asked);

    // What is said hangs on the batch alone; how it is said, also on how often other words were asked for.
    private uint Hash(string place, int times)
    {
        var hash = 2166136261u;
        foreach (var value in seed.ToByteArray().Concat(Encoding.UTF8.GetBytes(times == 0 ? place : Numbered(place, -times))))
        {
            hash = (hash ^ value) * 16777619u;
        }

        hash = (hash ^ (hash >> 16)) * 0x85ebca6bu;
        hash = (hash ^ (hash >> 13)) * 0xc2b2ae35u;
        return (hash ^ (hash >> 16)) >> 8;
    }
}
