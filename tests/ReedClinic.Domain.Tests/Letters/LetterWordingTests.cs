using System.Collections;
using System.Reflection;
using System.Text.RegularExpressions;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Letters;

namespace ReedClinic.Domain.Tests.Letters;

/// <summary>Each of the wordings that a letter may choose is sound, whichever alternatives are taken.</summary>
public sealed partial class LetterWordingTests
{
    private static readonly IReadOnlyDictionary<string, List<string>> ByClass = typeof(LetterComposer).Assembly.GetTypes()
        .Where(type => type.Namespace == "ReedClinic.Domain.Letters.Wordings" && type is { IsNested: false, IsAbstract: true, IsSealed: true })
        .ToDictionary(
            type => type.Name,
            type => type.GetProperties(BindingFlags.Static | BindingFlags.Public | BindingFlags.NonPublic)
                .SelectMany(property => Patterns(property.GetValue(null))).ToList());

    private static readonly string[] InNearlyEveryLetter =
    [
        "Thanks", "Looked", "TriedFirst", "GoodFirst", "Bothers", "First", "Wish", "Bye", "FirstDays", "Soak", "Dry", "Asked", "Lead", "NotSeen", "Stopped",
    ];

    private static readonly string[] TestsWithoutGain = ["Length"];

    private static readonly bool[] NowAndThen = [false, true];

    private static IReadOnlyList<string> All { get; } = [.. ByClass.Values.SelectMany(patterns => patterns)];

    [Fact]
    public void Whatever_is_chosen_comes_out_whole()
    {
        Assert.True(All.Count > 400);
        Assert.All(All, pattern => Assert.All(Readings(pattern), text =>
        {
            Assert.DoesNotMatch(@"  | [,;.:)]|[,;.]{2}|[{}|\[\]']|\( |^\s|\s$", text);
            Assert.InRange(text.Split(' ').Length, 1, 40);
        }));
    }

    [Fact]
    public void No_wording_stumbles_over_itself_nor_promises_the_end_where_more_follows() => Assert.All(All, pattern => Assert.All(Readings(pattern), text =>
        Assert.DoesNotMatch(
            @"(?i)write down what I wrote down|noted what I noticed|all the best, and best|glad to find that|good to find|\b(last of all|at the end|last) (what I|a plan|what to|stands|comes|you will find|I tell|you can read)|^I end with|^(below|in what follows), “|in its table:|its table shows|not quite two millimetres",
            text)));

    [Fact]
    public void No_wording_judges_or_hurts() => Assert.All(All, pattern => Assert.All(Readings(pattern), text =>
        Assert.DoesNotMatch(
            @"(?i)\b(bad|badly|wrong|mistake|fail|failed|failure|poor|poorly|ugly|careless|lazy|stupid|silly|hopeless|useless|never learn|you should have|you must|obviously|of course|simply|terrible|awful|disappoint\w*|spoil(ed|t) by you)\b",
            text)));

    [Fact]
    public void Every_finding_work_and_verdict_of_the_catalogues_has_its_words()
    {
        Assert.All(FindingCatalogue.All, kind => Assert.Contains(kind.Id.Value, Keys("TipWordings", "BodyWordings", "WholeReedWordings", "StrengthWordings")));
        Assert.Equal(AdjustmentCatalogue.All.Select(kind => kind.Id.Value).Order(), Keys("WorkVerbs").Order());
        Assert.Equal(Enum.GetNames<VerdictKind>().Order(), Keys("VerdictWordings").Order());
        Assert.Equal(Enum.GetNames<TestKind>().Except(TestsWithoutGain).Order(), Keys("NowWordings").Distinct().Order());
        Assert.All(TestScale.All.Where(scale => scale.Steps.Count > 0), scale => Assert.Equal(scale.Steps.Count, Stood(scale.TestKind).Count));
    }

    [Fact]
    public void What_nearly_every_letter_says_can_be_said_in_many_ways() => Assert.All(
        InNearlyEveryLetter, name => Assert.InRange(Ways(name).Sum(CountOf), 100, 100_000));

    // How a test came out has a clause for every word of its scale.
    private static IReadOnlyList<string> Stood(TestKind kind) => ((IReadOnlyDictionary<TestKind, IReadOnlyList<string>>)typeof(LetterComposer).Assembly
        .GetType("ReedClinic.Domain.Letters.Wordings.NowWordings")!.GetProperty("Stood", BindingFlags.Static | BindingFlags.NonPublic)!.GetValue(null)!)[kind];

    private static IEnumerable<string> Ways(string property) => ByClass.Keys
        .Select(name => typeof(LetterComposer).Assembly.GetType("ReedClinic.Domain.Letters.Wordings." + name)!
            .GetProperty(property, BindingFlags.Static | BindingFlags.NonPublic)?.GetValue(null))
        .OfType<IReadOnlyList<string>>().MaxBy(ways => ways.Count)!;

    private static IEnumerable<string> Keys(params string[] classes) => classes
        .SelectMany(name => typeof(LetterComposer).Assembly.GetType("ReedClinic.Domain.Letters.Wordings." + name)!
            .GetProperties(BindingFlags.Static | BindingFlags.NonPublic))
        .Select(property => property.GetValue(null)).OfType<IDictionary>().SelectMany(map => map.Keys.Cast<object>()).Select(key => key.ToString()!);

    private static IEnumerable<string> Patterns(object? value) => value switch
    {
        string text => [text],
        IDictionary map => map.Values.Cast<object>().SelectMany(Patterns),
        TeachingNote note => [.. note.Checks, .. note.Stroke ?? [], .. note.Plan],
        IEnumerable many => many.Cast<object>().SelectMany(Patterns),
        null => [],
        _ => value.GetType().GetProperties().Where(property => property.PropertyType == typeof(string) && property.Name is "What" or "Shows" or "Means")
            .SelectMany(property => Patterns(property.GetValue(value))),
    };

    // Read apart from the program's own reader: the innermost alternatives first, each of them in turn.
    internal static IEnumerable<string> Readings(string pattern) => Enumerable.Range(0, 14).SelectMany(round => NowAndThen.Select(past =>
    {
        var text = Tense().Replace(pattern, tense => tense.Groups[past ? 2 : 1].Value);
        for (var depth = 0; Innermost().IsMatch(text); depth++)
        {
            var turn = round + (depth * 5);
            text = Innermost().Replace(text, choice =>
            {
                var alternatives = choice.Groups[1].Value.Split('|');
                return alternatives[turn++ % alternatives.Length];
            });
        }

        return Slot().Replace(text.Replace('\'', '’'), "so");
    }));

    private static int CountOf(string pattern)
    {
        var text = Innermost().IsMatch(pattern) ? pattern : "{" + pattern + "}";
        var total = 1;
        while (Innermost().Match(text) is { Success: true } choice)
        {
            var alternatives = choice.Groups[1].Value.Split('|').Sum(part => Counted().Matches(part).Aggregate(1, (product, match) => product * int.Parse(match.Groups[1].Value, System.Globalization.CultureInfo.InvariantCulture)));
            text = string.Concat(text.AsSpan(0, choice.Index), FormattableString.Invariant($"«{alternatives}»"), text.AsSpan(choice.Index + choice.Length));
        }

        return Counted().Matches(text).Aggregate(total, (product, match) => product * int.Parse(match.Groups[1].Value, System.Globalization.CultureInfo.InvariantCulture));
    }

    [GeneratedRegex(@"\{([^{}]*)\}")]
    private static partial Regex Innermost();

    [GeneratedRegex(@"\[([^/\]]*)/([^\]]*)\]")]
    private static partial Regex Tense();

    [GeneratedRegex("<[a-z]+>")]
    private static partial Regex Slot();

    [GeneratedRegex(@"«(\d+)»")]
    private static partial Regex Counted();
}
