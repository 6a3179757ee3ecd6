using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Advice;
using ReedClinic.Domain.Catalogues;
using ReedClinic.Domain.Faults;

namespace ReedClinic.Domain.Diagnosis.Proposals;

/// <summary>What the latest crow, the effort and the length hold back. How the reed arrived doesn’t count.</summary>
internal static class CrowBars
{
    /// <summary>Resistance that has gone with the work.</summary>
    internal static HeldBack? ResistanceGone(ReedNow now, AdjustmentEntry entry) =>
        WorkKinds.IsScrape(entry.Id) && now.Work.Any(done => WorkKinds.IsScrape(done.Kind)) && now.HasSurely("feels-easy")
            ? Bars.Hold(entry, "Hardly anything is left to blow against: no more thinning.")
            : null;

    /// <summary>Easy and sharp: too much cane has usually gone already.</summary>
    internal static HeldBack? EasyAndSharp(ReedNow now, AdjustmentEntry entry) =>
        WorkKinds.IsScrape(entry.Id) && now.Has("feels-easy") && (now.CrowIsHigh || (now.Crow is null && now.Has("whole-sharp")))
            ? Bars.Hold(entry, "Easy and sharp at once: too much cane has usually gone already.", EvidenceMark.Published(TradeTexts.ReedFixes))
            : null;

    /// <summary>
    /// No clip while the crow is sharp, no scraping while it is flat: but a thick tip may come down where clips can follow, the sides
    /// of a flat and hard reed may be worked once it is known what closes first, and a thin centre or heart is helped by what stands around it.
    /// </summary>
    internal static HeldBack? HeldByCrow(ReedNow now, AdjustmentEntry entry)
    {
        var signs = now.Holding.ToHashSet();
        signs.RemoveWhere(sign => (sign.Value == "crow-high" && !now.CrowIsHigh) || (sign.Value == "crow-low" && !now.CrowIsLow));
        if (now.CrowIsHigh)
        {
            signs.Add(new SignId("crow-high"));
        }

        if (now.CrowIsLow)
        {
            signs.Add(new SignId("crow-low"));
        }

        if (!entry.NotWhile.Any(signs.Contains))
        {
            return null;
        }

        return WorkKinds.IsClip(entry.Id)
            ? Bars.Hold(entry, "The latest crow is sharp, and a clip takes it higher.", EvidenceMark.Published(TradeTexts.ReedFixes))
            : !entry.IsHeldBack(signs) || WorkKinds.IsScrape(entry.Id) && KeepsProportion(now, entry) ? NeedsRoom(now, entry)
            : Bars.Hold(entry, "The latest crow is flat, and scraping takes it further down.", EvidenceMark.Published(TradeTexts.ReedFixes));
    }

    /// <summary>A clip that would leave it shorter than it may get.</summary>
    internal static HeldBack? NoLength(ReedNow now, AdjustmentEntry entry) => entry.Id.Value switch
    {
        "clip-hair" or "square-tip" when !now.RoomFor(ReedLengths.UsualHair) => Short(now, entry),
        "clip" when !now.RoomFor(ReedLengths.UsualClip) => Short(now, entry),
        _ => null,
    };

    private static HeldBack Short(ReedNow now, AdjustmentEntry entry) =>
        Bars.Hold(entry, KnownNumber.Say($"No length is left for it: {now.Length!.Millimetres:0.0} mm, and {now.Floor!.Millimetres:0.#} mm is as short as it should get."), now.Floor.Mark);

    /// <summary>Corners and sides of a tip whose corners are thick or whose centre is thin, and the neighbours of a thin heart.</summary>
    private static bool KeepsProportion(ReedNow now, AdjustmentEntry entry) =>
        (WorkKinds.KeepsTheCentre(entry.Id) && now.Has("tip-corners-thick")) || Proportion.Serves(now, entry.Id);

    private static HeldBack? NeedsRoom(ReedNow now, AdjustmentEntry entry) =>
        now.Has("centre-closes-first") || now.RoomFor(ReedLengths.UsualHair)
            ? null
            : Bars.Hold(entry, "The crow is flat, and no length is left for the clip that would have to follow.");
}
