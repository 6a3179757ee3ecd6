using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Catalogues;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.Pitch;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Web.Features.Bench.Forms;

/// <summary>Something found, as it is typed: a spot, a comparison, a shape across or a separation along.</summary>
public sealed class FindingForm : EntryForm
{
    /// <summary>What stands before the fields of the place that is compared with.</summary>
    public const string Other = nameof(Finding.OtherPlace);

    /// <inheritdoc />
    public override EntryKind Kind => EntryKind.Finding;

    /// <summary>True when a second place is asked for.</summary>
    public bool IsComparison => Typed.Maybe<FindingShape>(nameof(Finding.Shape)) == FindingShape.Comparison;

    /// <summary>
    /// Fills in what the chosen kind usually is, where nothing was chosen or what stands is the last kind's usual.
    /// </summary>
    /// <param name="before">The kind that was chosen before.</param>
    /// <param name="own">What the studio added.</param>
    public void TakeUsual(FindingKindId before, OwnKinds own)
    {
        ArgumentNullException.ThrowIfNull(own);
        if (own.Find(new FindingKindId(Typed[nameof(Finding.FindingKind)])) is not { } now)
        {
            return;
        }

        var was = own.Find(before);
        Take(nameof(Finding.Character), now.Usually.ToString(), was?.Usually.ToString());
        if (now.Shape != FindingShape.Comparison)
        {
            // A comparison needs a second place, so it is the teacher who says that it is one.
            Take(nameof(Finding.Shape), now.Shape.ToString(), was?.Shape.ToString());
        }

        Take(nameof(Zone), now.Zone.ToString(), was?.Zone.ToString());
    }

    /// <inheritdoc />
    public override Outcome<BenchEntry> ToDomain(Tuning tuning)
    {
        TakeUsual(default, OwnKinds.None);
        var comparison = IsComparison;
        return Any(Finding.Of(
            new FindingKindId(Typed[nameof(Finding.FindingKind)]),
            Typed.Choice<FindingCharacter>(nameof(Finding.Character)),
            Typed.PlaceAt(),
            Typed.Maybe<FindingShape>(nameof(Finding.Shape)) ?? FindingShape.Spot,
            comparison ? Typed.Maybe<Relation>(nameof(Finding.Relation)) : null,
            comparison ? Typed.MaybePlace(Other) : null,
            Typed.Maybe<KnownBy>(nameof(Finding.KnownBy)) ?? KnownBy.NotSaid,
            Typed.Maybe<Certainty>(nameof(Finding.Certainty)) ?? Certainty.Certain,
            Typed.Maybe<Arose>(nameof(Finding.Arose)) ?? Arose.AsItArrived,
            Text(nameof(Finding.Words))));
    }

    /// <inheritdoc />
    protected override void Fill(BenchEntry entry)
    {
        var finding = (Finding)entry;
        Typed[nameof(Finding.FindingKind)] = finding.FindingKind.Value;
        Typed[nameof(Finding.Character)] = finding.Character.ToString();
        Typed[nameof(Finding.Shape)] = finding.Shape.ToString();
        Typed.Put(finding.Place);
        Typed[nameof(Finding.Relation)] = finding.Relation?.ToString() ?? "";
        if (finding.OtherPlace is { } other)
        {
            Typed.Put(other, Other);
        }

        Typed[nameof(Finding.KnownBy)] = finding.KnownBy == KnownBy.NotSaid ? "" : finding.KnownBy.ToString();
        Typed[nameof(Finding.Certainty)] = finding.Certainty.ToString();
        Typed[nameof(Finding.Arose)] = finding.Arose.ToString();
        Typed[nameof(Finding.Words)] = OwnId.Remark(finding.FindingKind.Value, finding.Words) ?? "";
    }

    private void Take(string field, string usual, string? before)
    {
        if (Typed[field].Length == 0 || Typed[field] == before)
        {
            Typed[field] = usual;
        }
    }
}
