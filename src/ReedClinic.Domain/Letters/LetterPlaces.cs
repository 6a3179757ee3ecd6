using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Letters;

/// <summary>Places on a reed as a letter says them, without words that only a reed-maker knows.</summary>
internal static class LetterPlaces
{
    /// <summary>A place, to stand inside a sentence: “the corners of the tip on the upper blade”.</summary>
    /// <param name="place">The place.</param>
    public static string Name(Place place) => place.Sides switch
    {
        Sides.Left => OfSide(place, "left"),
        Sides.Right => OfSide(place, "right"),
        _ => Name(place.Zone) + On(place, " "),
    };

    private static string OfSide(Place place, string side)
    {
        var blade = place.Blades switch { Blades.Upper => " on the upper blade", Blades.Lower => " on the lower blade", _ => "" };
        return place.Zone switch
        {
            Zone.TipCorners => $"the {side} corner of {Of(place)}",
            Zone.TipSides => $"the {side} side of the tip{blade}",
            Zone.HeartSides => $"the {side} side of the heart{blade}",
            Zone.Windows => $"the {side} window{blade}",
            Zone.Rails => $"the {side} rail{blade}",
            Zone.SideEdges => $"the {side} side edge{blade}",
            Zone.WholeReed => $"the {side} of {(blade.Length == 0 ? "the reed" : blade[" on ".Length..])}",
            _ => $"the {side} of {Name(place.Zone)}{blade}",
        };
    }

    /// <summary>What a corner is a corner of: the blade, where only one is meant, else the tip.</summary>
    /// <param name="place">The place.</param>
    public static string Of(Place place) => place.Blades switch { Blades.Upper => "the upper blade", Blades.Lower => "the lower blade", _ => "the tip" };

    /// <summary>Blade and side where they are said: “on the left of the upper blade”; empty where they aren't.</summary>
    /// <param name="place">The place.</param>
    /// <param name="before">What stands before it.</param>
    public static string On(Place place, string before = "")
    {
        var blade = place.Blades switch { Blades.Upper => "on the upper blade", Blades.Lower => "on the lower blade", _ => null };
        var side = place.Sides switch { Sides.Left => "on the left", Sides.Right => "on the right", _ => null };
        return (blade, side) switch
        {
            (null, null) => "",
            (null, _) => before + side,
            (_, null) => before + blade,
            _ => $"{before}{side} of {blade["on ".Length..]}",
        };
    }

    /// <summary>One place against another: “at the corners of the tip, the left thicker than the right”.</summary>
    /// <param name="place">The place.</param>
    /// <param name="relation">How it stands to the other.</param>
    /// <param name="other">The other place.</param>
    public static string Against(Place place, Relation relation, Place other)
    {
        var at = place.Zone == Zone.WholeReed ? "" : $"at {Name(place.Zone)}, ";
        var on = place.Blades switch { Blades.Upper => "on the upper blade ", Blades.Lower => "on the lower blade ", _ => "" };
        return (place, other) switch
        {
            ({ Zone: var zone, Blades: var blades, Sides: Sides.Left or Sides.Right }, { Sides: Sides.Left or Sides.Right })
                when zone == other.Zone && blades == other.Blades && place.Sides != other.Sides => $"{at}{on}the {Side(place)} {relation.Name()} the {Side(other)}",
            ({ Zone: var zone, Sides: var sides, Blades: Blades.Upper or Blades.Lower }, { Blades: Blades.Upper or Blades.Lower })
                when zone == other.Zone && sides == other.Sides && place.Blades != other.Blades => $"{at}the {Blade(place)} blade {relation.Name()} the {Blade(other)}",
            _ => $"{Name(place)} {relation.Name()} {Name(other)}",
        };
    }

    /// <summary>The same of what was found: of two halves that aren’t alike neither is the place.</summary>
    /// <param name="finding">The finding.</param>
    public static string On(Finding finding) => On(finding.FindingKind.Value switch
    {
        "left-right-uneven" => finding.Place with { Sides = Sides.Both },
        "blades-uneven" => finding.Place with { Sides = Sides.Both, Blades = Blades.Both },
        _ => finding.Place,
    });

    private static string Side(Place place) => place.Sides == Sides.Left ? "left" : "right";

    private static string Blade(Place place) => place.Blades == Blades.Upper ? "upper" : "lower";

    /// <summary>A part of the reed.</summary>
    /// <param name="zone">The part.</param>
    public static string Name(Zone zone) => zone == Zone.WholeReed ? "the reed as a whole" : "the " + zone.NamePlainly();
}
