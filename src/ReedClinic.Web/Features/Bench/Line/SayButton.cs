using System.Globalization;
using System.Text.Json;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Reeds;
using ReedClinic.Web.Features.Bench.Forms;

namespace ReedClinic.Web.Features.Bench.Line;

/// <summary>What a button that says something at one press sends: the fields of the same form that is posted by hand.</summary>
public static class SayButton
{
    /// <summary>The fields as the script reads them.</summary>
    /// <param name="kind">The kind of entry.</param>
    /// <param name="fields">Its fields; an empty one is left out.</param>
    public static string Of(EntryKind kind, params IEnumerable<(string Name, string? Value)> fields) => JsonSerializer.Serialize(
        fields.Where(field => !string.IsNullOrEmpty(field.Value)).Prepend((EntryForm.KindField, kind.ToString()))
            .ToDictionary(field => field.Item1, field => field.Item2));

    /// <summary>The fields that say this work was of another kind, in its own place; the rest stays as it was said.</summary>
    /// <param name="work">The work.</param>
    /// <param name="seen">The last entry of its fact.</param>
    /// <param name="kind">What it was.</param>
    public static string Of(Adjustment work, EntryId seen, AdjustmentKind kind) => Of(
        EntryKind.Adjustment,
        ("Seen", seen.Value.ToString()),
        (nameof(Adjustment.AdjustmentKind), kind.Id.Value),
        (nameof(Zone), kind.Zone.ToString()),
        (nameof(Blades), work.Blades == Blades.Both ? null : work.Blades.ToString()),
        (nameof(Sides), work.Sides == Sides.Both ? null : work.Sides.ToString()),
        (nameof(Amount.Strokes), work.AmountStrokes?.ToString(CultureInfo.InvariantCulture)),
        (nameof(Amount.Millimetres), work.Amount.Millimetres?.ToString("0.###", CultureInfo.InvariantCulture)),
        (nameof(Amount), work.AmountWords),
        (nameof(Adjustment.ForFindingId), work.ForFindingId?.Value.ToString()),
        (nameof(Adjustment.ForTheSakeOf), work.ForTheSakeOf?.ToString()),
        (nameof(Adjustment.Words), work.Words));

    /// <summary>The fields that take back an entry, wherever in the log it stands.</summary>
    /// <param name="fact">The fact.</param>
    public static string Back(BenchFact fact)
    {
        ArgumentNullException.ThrowIfNull(fact);
        return Of(EntryKind.Undo, ("Seen", fact.Tail.Value.ToString()), (UndoForm.OneField, "true"));
    }

    /// <summary>The fields that bring back what was taken back, in its own place.</summary>
    /// <param name="fact">The fact.</param>
    /// <param name="gone">The wording.</param>
    public static string Again(BenchFact fact, BenchEntry gone)
    {
        ArgumentNullException.ThrowIfNull(fact);
        ArgumentNullException.ThrowIfNull(gone);
        return Of(gone.Kind, [("Seen", fact.Tail.Value.ToString()), .. EntryForm.FieldsOf(gone).Select(field => (field.Key, (string?)field.Value))]);
    }

    /// <summary>The fields that say this work once more.</summary>
    /// <param name="work">The work.</param>
    public static string Of(Adjustment work) => Of(
        EntryKind.Adjustment,
        (nameof(Adjustment.AdjustmentKind), work.AdjustmentKind.Value),
        (nameof(Zone), work.Zone.ToString()),
        (nameof(Blades), work.Blades == Blades.Both ? null : work.Blades.ToString()),
        (nameof(Sides), work.Sides == Sides.Both ? null : work.Sides.ToString()),
        (nameof(Amount.Strokes), work.AmountStrokes?.ToString(CultureInfo.InvariantCulture)),
        (nameof(Amount.Millimetres), work.Amount.Millimetres?.ToString("0.###", CultureInfo.InvariantCulture)),
        (nameof(Amount), work.AmountWords),
        (nameof(Adjustment.ForTheSakeOf), work.ForTheSakeOf?.ToString()),
        (nameof(Adjustment.Words), Agreement.Without(work.Words)));
}
