namespace ReedClinic.Domain.Reeds;

/// <summary>A part of the reed that a finding or an adjustment can be about, from the tip down.</summary>
/// <remarks>The parts are the trade's own (common practice).</remarks>
public enum Zone
{
    /// <summary>The reed as a whole.</summary>
    WholeReed,

    /// <summary>The last few tenths of a millimetre, the thinnest line of the reed.</summary>
    TipEdge,

    /// <summary>The two outer ends of the tip edge.</summary>
    TipCorners,

    /// <summary>The flanks of the tip, between corner and heart.</summary>
    TipSides,

    /// <summary>The middle of the tip, left a little thicker as support.</summary>
    TipCentre,

    /// <summary>The line where the heart ends and the tip begins, with the low line in front of it.</summary>
    Rooftop,

    /// <summary>The slope from heart to tip.</summary>
    Transition,

    /// <summary>The thick middle behind the tip.</summary>
    HeartCentre,

    /// <summary>The flanks of the heart, between spine and edge.</summary>
    HeartSides,

    /// <summary>The lower border of the heart, above the windows.</summary>
    HeartBottom,

    /// <summary>The hollowed areas of the back, left and right of the spine.</summary>
    Windows,

    /// <summary>The lower end of the windows, towards the bark.</summary>
    WindowBase,

    /// <summary>The thick centre line from the back to the heart.</summary>
    Spine,

    /// <summary>The narrow strips left along the edges of the back.</summary>
    Rails,

    /// <summary>The band of bark above the thread.</summary>
    Bark,

    /// <summary>The long edges where the two blades meet.</summary>
    SideEdges,

    /// <summary>The gap between the blades at the tip, seen from its end.</summary>
    Opening,

    /// <summary>The inside of the reed, between the blades.</summary>
    Inside,

    /// <summary>A wire round the cane.</summary>
    Wire,

    /// <summary>The cord that ties the cane to the staple.</summary>
    Thread,

    /// <summary>The narrow end of the staple.</summary>
    Eye,

    /// <summary>The sleeve that seals the staple in the instrument.</summary>
    Cork,
}

/// <summary>Which blade is meant.</summary>
public enum Blades
{
    /// <summary>Both blades, or no blade in particular.</summary>
    Both,

    /// <summary>The blade marked as upper when the reed arrived.</summary>
    Upper,

    /// <summary>The other blade.</summary>
    Lower,
}

/// <summary>Which half of a blade is meant, seen from that blade's own face with the tip up.</summary>
public enum Sides
{
    /// <summary>Left and right, or no side in particular.</summary>
    Both,

    /// <summary>The left half.</summary>
    Left,

    /// <summary>The right half.</summary>
    Right,
}

/// <summary>A place on the reed: a zone, on which blade, on which side.</summary>
/// <param name="Zone">The part of the reed.</param>
/// <param name="Blades">Which blade; both unless said.</param>
/// <param name="Sides">Which side, seen from the blade's own face, tip up; both unless said.</param>
public readonly record struct Place(Zone Zone, Blades Blades = Blades.Both, Sides Sides = Sides.Both);
