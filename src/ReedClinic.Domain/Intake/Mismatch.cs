using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Intake;

/// <summary>How a reed differed on arrival from what was announced.</summary>
public enum MismatchKind
{
    /// <summary>Announced, but not in the parcel.</summary>
    Missing,

    /// <summary>In the parcel without having been announced.</summary>
    Extra,

    /// <summary>Damaged when it was unpacked.</summary>
    Damaged,

    /// <summary>Damp: it had to dry before anything else.</summary>
    Damp,

    /// <summary>Mouldy: nobody played it.</summary>
    Mouldy,
}

/// <summary>One difference between what was announced and what lay in the parcel.</summary>
/// <param name="Kind">What differs.</param>
/// <param name="Reed">Which reed.</param>
/// <param name="Number">The number on its tag.</param>
/// <param name="Words">How it is recognised, or what is damaged.</param>
public sealed record Mismatch(MismatchKind Kind, ReedId Reed, int Number, string Words)
{
    internal static IEnumerable<Mismatch> Of(Reed reed)
    {
        if (reed.Presence is Presence.Missing)
        {
            yield return new Mismatch(MismatchKind.Missing, reed.Id, reed.Number, reed.HowToRecognise);
        }

        if (reed.Presence is Presence.Extra)
        {
            yield return new Mismatch(MismatchKind.Extra, reed.Id, reed.Number, reed.HowToRecognise);
        }

        if (reed.Damage is { } damage)
        {
            yield return new Mismatch(MismatchKind.Damaged, reed.Id, reed.Number, damage);
        }

        if (reed.Fitness is Fitness.DryFirst)
        {
            yield return new Mismatch(MismatchKind.Damp, reed.Id, reed.Number, reed.HowToRecognise);
        }

        if (reed.Fitness is Fitness.Mould)
        {
            yield return new Mismatch(MismatchKind.Mouldy, reed.Id, reed.Number, reed.HowToRecognise);
        }
    }
}
