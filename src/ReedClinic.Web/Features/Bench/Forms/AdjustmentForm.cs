using System.Globalization;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Advice;
using ReedClinic.Domain.Catalogues;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.Pitch;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Web.Features.Bench.Forms;

/// <summary>Something done to the reed, as it is typed.</summary>
public sealed class AdjustmentForm : EntryForm
{
    /// <inheritdoc />
    public override EntryKind Kind => EntryKind.Adjustment;

    /// <summary>The chosen kind, or null.</summary>
    public AdjustmentKind? Chosen => AdjustmentCatalogue.Find(new AdjustmentKindId(Typed[nameof(Adjustment.AdjustmentKind)]));

    /// <summary>The lasting name of what was chosen, shipped or the studio’s own.</summary>
    public AdjustmentKindId ChosenId => new(Typed[nameof(Adjustment.AdjustmentKind)]);

    /// <summary>What it says so far as work that is planned; null while no kind or place is chosen.</summary>
    public PlannedWork? Planned => Chosen is { } kind && Typed.MaybePlace() is { } place
        ? new PlannedWork(kind.Id, place, HowMuch)
        : null;

    /// <summary>How much of it, as far as it can be read; nothing said where it can't.</summary>
    public Amount HowMuch => ReadAmount() is Outcome<Amount>.Done(var amount) ? amount : Amount.NotSaid;

    /// <summary>Whether the student has agreed to it; false where it was done without, null while nothing is said.</summary>
    public bool? Agreed => Agreement.Read(Typed[Agreement.Field]);

    /// <summary>Fills in the zone that the chosen kind usually works, where none was chosen or the last kind's usual stands.</summary>
    /// <param name="before">The kind that was chosen before.</param>
    /// <param name="own">What the studio added.</param>
    public void TakeUsual(AdjustmentKindId before, OwnKinds own)
    {
        ArgumentNullException.ThrowIfNull(own);
        var zone = Typed[nameof(Zone)];
        if (own.Find(ChosenId) is { } now && (zone.Length == 0 || zone == own.Find(before)?.Zone.ToString()))
        {
            Typed[nameof(Zone)] = now.Zone.ToString();
        }
    }

    /// <inheritdoc />
    public override Outcome<BenchEntry> ToDomain(Tuning tuning)
    {
        TakeUsual(default, OwnKinds.None);
        var amount = ReadAmount();
        var made = Adjustment.Of(
            new AdjustmentKindId(Typed[nameof(Adjustment.AdjustmentKind)]),
            Typed.PlaceAt(),
            amount is Outcome<Amount>.Done(var read) ? read : Amount.NotSaid,
            Typed.Id(nameof(Adjustment.ForFindingId)) is { } finding ? new EntryId(finding) : null,
            Typed.Maybe<Zone>(nameof(Adjustment.ForTheSakeOf)),
            Remark());
        return (amount, made) switch
        {
            (Outcome<Amount>.Refused(var one), Outcome<Adjustment>.Refused(var two)) => new Outcome<BenchEntry>.Refused([.. one, .. two]),
            (Outcome<Amount>.Refused(var one), _) => new Outcome<BenchEntry>.Refused(one),
            _ => Any(made),
        };
    }

    private Outcome<Amount> ReadAmount() => Amount.Read(Typed[nameof(Amount.Strokes)], Typed[nameof(Amount.Millimetres)], Text(nameof(Amount)));

    /// <inheritdoc />
    protected override void Fill(BenchEntry entry)
    {
        var work = (Adjustment)entry;
        Typed[nameof(Adjustment.AdjustmentKind)] = work.AdjustmentKind.Value;
        Typed.Put(work.Place);
        Typed[nameof(Amount.Strokes)] = work.AmountStrokes?.ToString(CultureInfo.InvariantCulture) ?? "";
        Typed[nameof(Amount.Millimetres)] = work.Amount.Millimetres?.ToString("0.###", CultureInfo.InvariantCulture) ?? "";
        Typed[nameof(Amount)] = work.AmountWords ?? "";
        Typed[nameof(Adjustment.ForFindingId)] = work.ForFindingId?.Value.ToString() ?? "";
        Typed[nameof(Adjustment.ForTheSakeOf)] = work.ForTheSakeOf?.ToString() ?? "";
        Typed[nameof(Adjustment.Words)] = OwnId.Remark(work.AdjustmentKind.Value, Agreement.Without(work.Words)) ?? "";
        Typed[Agreement.Field] = Agreement.FieldOf(work.Words);
    }

    // Words that have to be given can't be given by that answer alone.
    private string? Remark() =>
        Agreed is { } agreed && (Typed[nameof(Adjustment.AdjustmentKind)] != AdjustmentKindId.SomethingElse.Value || !string.IsNullOrWhiteSpace(Typed[nameof(Adjustment.Words)]))
            ? Agreement.With(Typed[nameof(Adjustment.Words)], agreed)
            : Text(nameof(Adjustment.Words));
}
