using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Recurrence;
using ReedClinic.Web.Shared.Forms;

namespace ReedClinic.Web.Features.CommonThread;

/// <summary>Candidates as things to choose, each with its evidence.</summary>
internal static class CandidateChoices
{
    private const int Most = 6;

    /// <summary>The likeliest candidates, what was chosen before, and "in my own words".</summary>
    /// <param name="candidates">The candidates, the likeliest first.</param>
    /// <param name="chosen">The kind that is chosen now.</param>
    /// <param name="noLongerThere">What is said of a chosen kind that isn't on the sheet any more.</param>
    /// <param name="ownWords">The choice without a kind.</param>
    public static IReadOnlyList<Choice> Of(
        IReadOnlyList<Candidate> candidates, string? chosen, string noLongerThere, string ownWords)
    {
        var shown = candidates.Where((candidate, index) => index < Most || candidate.Kind.Id.Value == chosen)
            .Select(candidate => new Choice(
                candidate.Kind.Id.Value, Sentence(candidate.Kind.Name), $"{candidate.Evidence} {candidate.Kind.ForStudent}"))
            .ToList();
        if (chosen is { Length: > 0 } && shown.All(choice => choice.Value != chosen)
            && FindingCatalogue.Find(new FindingKindId(chosen)) is { } kind)
        {
            shown.Add(new Choice(chosen, Sentence(kind.Name), noLongerThere));
        }

        return [.. shown, new Choice("", ownWords)];
    }

    /// <summary>A name with a capital, to stand alone.</summary>
    /// <param name="name">A name in small letters.</param>
    public static string Sentence(string name) => char.ToUpperInvariant(name[0]) + name[1..];
}
