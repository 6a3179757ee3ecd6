using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.Pitch;

namespace ReedClinic.Web.Features.Bench.Forms;

/// <summary>Something looked for and not there, as it is typed.</summary>
public sealed class LookedForForm : EntryForm
{
    /// <inheritdoc />
    public override EntryKind Kind => EntryKind.LookedFor;

    /// <inheritdoc />
    public override Outcome<BenchEntry> ToDomain(Tuning tuning) => Any(LookedFor.Of(
        new FindingKindId(Typed[nameof(LookedFor.FindingKind)]),
        Typed.Maybe<KnownBy>(nameof(LookedFor.KnownBy)) ?? KnownBy.NotSaid,
        Text(nameof(LookedFor.Words))));

    /// <inheritdoc />
    protected override void Fill(BenchEntry entry)
    {
        var looked = (LookedFor)entry;
        Typed[nameof(LookedFor.FindingKind)] = looked.FindingKind.Value;
        Typed[nameof(LookedFor.KnownBy)] = looked.KnownBy == KnownBy.NotSaid ? "" : looked.KnownBy.ToString();
        Typed[nameof(LookedFor.Words)] = OwnId.Remark(looked.FindingKind.Value, looked.Words) ?? "";
    }
}
