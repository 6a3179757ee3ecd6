using Microsoft.Extensions.Localization;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Catalogues;
using ReedClinic.Domain.Faults;

namespace ReedClinic.Web.Features.Bench.Fields;

/// <summary>The lists that findings are chosen from.</summary>
internal static class FindingChoices
{
    /// <summary>The ways in which something is known.</summary>
    public static IReadOnlyList<ListChoice> Ways { get; } =
        [.. ListChoice.Of<KnownBy>(way => way.ToString().ToLowerInvariant()).Where(choice => choice.Value != nameof(KnownBy.NotSaid))];

    /// <summary>Every kind of finding under a heading, and "something else".</summary>
    /// <param name="t">The headings.</param>
    /// <param name="own">What the studio added.</param>
    /// <param name="chosen">The kind that is chosen now: what was retired stays choosable where it stands.</param>
    public static IReadOnlyList<ListChoice> Of(IStringLocalizer<BenchText> t, OwnKinds own, string? chosen) =>
    [
        .. FindingCatalogue.All.OrderBy(kind => kind.Usually == FindingCharacter.Strength)
            .Select(kind => new ListChoice(kind.Id.Value, kind.Name, t[kind.Usually == FindingCharacter.Strength ? "Strengths" : "Troubles"])),
        .. own.Findings.Select(kind => new ListChoice(kind.Id.Value, kind.Name, t["OurOwn"])),
        .. OwnId.Is(chosen) && own.Findings.All(kind => kind.Id.Value != chosen) && own.Find(new FindingKindId(chosen!)) is { } retired
            ? new[] { new ListChoice(chosen!, own.NameOf(retired.Id), t["OurOwn"]) } : [],
        new ListChoice(FindingKindId.SomethingElse.Value, FindingCatalogue.NameOf(FindingKindId.SomethingElse), t["Otherwise"]),
    ];
}
