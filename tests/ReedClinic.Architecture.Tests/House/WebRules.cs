using System.Text.RegularExpressions;
using ReedClinic.Architecture.Tests.Reading;

namespace ReedClinic.Architecture.Tests.House;

/// <summary>What a screen may not do itself: storage belongs to the Books, standard output to Announcement.</summary>
public static partial class WebRules
{
    private const string Web = "src/ReedClinic.Web";

    public static IEnumerable<string> EntityFrameworkOutsideItsDoor(IEnumerable<Source> files) =>
        from file in files
        where file.IsUnder(Web) && file.Extension is ".cs" or ".razor"
        where file.Path != $"{Web}/Program.cs" && !file.IsUnder($"{Web}/Account")
        where file.Text.Contains("EntityFrameworkCore", StringComparison.Ordinal)
        select $"{file.Path} names EntityFrameworkCore";

    public static IEnumerable<string> ContextsInComponents(IEnumerable<Source> files) =>
        from file in files
        where file.IsUnder(Web) && (file.Extension == ".razor" || file.Name.EndsWith(".razor.cs", StringComparison.Ordinal))
        from Match match in Context().Matches(file.Text)
        select $"{file.Path}:{file.LineOf(match.Index)} names {match.Value}";

    /// <summary>The log, the map, the sheet and the letter are our own markup: a row of buttons from a library costs megabytes.</summary>
    public static IEnumerable<string> LibraryTagsInOurDrawings(IEnumerable<Source> files) =>
        from file in files
        where file.Extension == ".razor" && OwnMarkup().IsMatch(file.Path)
        from Match match in LibraryTag().Matches(file.Text)
        select $"{file.Path}:{file.LineOf(match.Index)} uses {match.Value}";

    public static IEnumerable<string> StandardOutput(IEnumerable<Source> files) =>
        from file in files
        where file.IsUnder("src") && file.Extension is ".cs" or ".razor"
        where file.Name != "Announcement.cs"
        from Match match in Output().Matches(file.Text)
        select $"{file.Path}:{file.LineOf(match.Index)} writes to standard output ({match.Value})";

    public static IEnumerable<string> BannedSymbolsLetThrough(IEnumerable<Source> files, IReadOnlyDictionary<string, string> reasons) =>
        from file in files
        where file.IsUnder("src") && file.Text.Contains("disable RS0030", StringComparison.Ordinal) && !reasons.ContainsKey(file.Path)
        select $"{file.Path} switches the banned symbols off";

    /// <summary>People read times by the clock on their wall; only what says that it is in UTC is.</summary>
    public static IEnumerable<string> TimesOfNoWall(IEnumerable<Source> files) =>
        from file in files
        where file.IsUnder("src/ReedClinic.Web") && file.Extension is ".cs" or ".razor"
        from Match match in SaidTime().Matches(file.Text)
        where !match.Value.Contains("There(", StringComparison.Ordinal) && !match.Value.StartsWith("there.", StringComparison.Ordinal) && !match.Value.Contains("UtcDateTime", StringComparison.Ordinal)
        select $"{file.Path}:{file.LineOf(match.Index)} shows a time without asking where ({match.Value})";

    [GeneratedRegex(@"[\w.!?()]*\.ToString\(""[^""]*(HH|MMM)[^""]*""")]
    private static partial Regex SaidTime();

    [GeneratedRegex(@"\b(IDbContextFactory|\w*ClinicDb|DbContext)\b")]
    private static partial Regex Context();

    [GeneratedRegex(@"/Letters?/|/Recurrence/|Map\w*\.razor$|Log\w*\.razor$|Sheet\w*\.razor$|Letter\w*\.razor$")]
    private static partial Regex OwnMarkup();

    [GeneratedRegex(@"<Mud\w+")]
    private static partial Regex LibraryTag();

    [GeneratedRegex(@"\bConsole\.(Write\w*|Out|Error|OpenStandard\w+)|\bOpenStandardOutput\b")]
    private static partial Regex Output();
}
