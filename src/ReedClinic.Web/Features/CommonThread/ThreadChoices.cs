using Microsoft.Extensions.Localization;
using ReedClinic.Data.Recurrence;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Recurrence;
using ReedClinic.Web.Shared.Forms;

namespace ReedClinic.Web.Features.CommonThread;

/// <summary>What can be said of a batch as things to choose, each with its evidence.</summary>
internal static class ThreadChoices
{
    private const int Most = 6;

    /// <summary>What is done well, the surest first.</summary>
    /// <param name="view">The batch.</param>
    /// <param name="chosen">The kind that is chosen now.</param>
    /// <param name="noLongerThere">What is said of a chosen kind that isn't on the sheet any more.</param>
    /// <param name="ownWords">The choice without a kind.</param>
    public static IReadOnlyList<Choice> Strengths(CommonThreadView view, string? chosen, string noLongerThere, string ownWords) =>
        With(view, [.. view.Strengths.Take(Most).Select(one => Of(view, one.Kind, one.Theme, one.Recurring.Evidence))], FindingCharacter.Strength, chosen, noLongerThere, ownWords);

    /// <summary>Whether anything to work on was found on two of the student’s reeds, these or earlier ones; of a lone reed there is nothing to share.</summary>
    /// <param name="view">The batch.</param>
    public static bool HasShared(CommonThreadView view) => view.Report.Faults.Any(line => line.InBatch.Tally.Found > 0 && IsShared(line));

    /// <summary>What could be taught: first what explains most; then what else was found. Of several reeds only what two of them share.</summary>
    /// <param name="view">The batch.</param>
    /// <param name="chosen">The kind that is chosen now.</param>
    /// <param name="noLongerThere">What is said of a chosen kind that isn't on the sheet any more.</param>
    /// <param name="ownWords">The choice without a kind.</param>
    public static IReadOnlyList<Choice> Lessons(CommonThreadView view, string? chosen, string noLongerThere, string ownWords)
    {
        List<Choice> shown = [.. view.Lessons.Where(one => IsOffered(view, one.Recurring)).Take(Most).Select(one => Of(view, one.Kind, one.Theme, one.Sentence))];
        var others = view.Report.Faults.Where(line => !line.Theme.IsFamily && line.InBatch.Tally.Found > 0 && IsOffered(view, line))
            .Where(line => shown.TrueForAll(choice => choice.Value != line.Theme.Id))
            .Take(Most - shown.Count);
        return With(view, [.. shown, .. others.Select(line => Of(view, line.Theme.Kinds[0], line.Theme, line.Evidence))], FindingCharacter.Fault, chosen, noLongerThere, ownWords);
    }

    private static bool IsOffered(CommonThreadView view, Recurring line) => view.InBatch.Reeds.Count == 1 || IsShared(line);

    private static bool IsShared(Recurring line) => line.Altogether.Found > 1;

    /// <summary>On how many of how many, in figures; where not all were looked at for it, how many there are beside, as the sentences say it.</summary>
    /// <param name="t">The words.</param>
    /// <param name="tally">How many of how many.</param>
    /// <param name="some">The word where not all were looked at for it.</param>
    public static string Count(IStringLocalizer<CommonThreadText> t, Tally tally, string some = "OutOfLooked") =>
        tally.Looked == 0 ? t["NotLooked"] : t[tally.Looked < tally.Reeds ? some : "OutOf", tally.Found, tally.Looked, tally.Reeds];

    /// <summary>A name with a capital, to stand alone.</summary>
    /// <param name="name">A name in small letters.</param>
    public static string Sentence(string name) => char.ToUpperInvariant(name[0]) + name[1..];

    private static Choice Of(CommonThreadView view, FindingKindId kind, Theme theme, string evidence) => new(
        kind.Value,
        theme.IsFamily ? $"{Sentence(theme.Name)}: {view.Catalogue.Own.NameOf(kind)}" : Sentence(theme.Name),
        $"{evidence} {view.Catalogue.Own.Find(kind)?.ForStudent}".TrimEnd());

    private static IReadOnlyList<Choice> With(
        CommonThreadView view, List<Choice> shown, FindingCharacter character, string? chosen, string noLongerThere, string ownWords)
    {
        if (chosen is { Length: > 0 } && shown.TrueForAll(choice => choice.Value != chosen)
            && view.Catalogue.Own.Find(new FindingKindId(chosen)) is { } kind)
        {
            var tally = view.InBatch.Count(kind.Id, character);
            shown.Add(new Choice(chosen, Sentence(kind.Name), tally.Found == 0 ? noLongerThere : EvidenceSentence.For(tally, view.Before(kind.Id, character))));
        }

        return [.. shown, new Choice("", ownWords)];
    }
}
