using ReedClinic.Domain.Reeds;

namespace ReedClinic.Web.Features.Bench.Forms;

/// <summary>A place on the reed as three fields of a form.</summary>
public static class PlaceText
{
    /// <summary>The place in the fields; its zone is none when none was chosen.</summary>
    /// <param name="typed">The form.</param>
    /// <param name="prefix">What stands before the names, for a second place.</param>
    public static Place PlaceAt(this TypedText typed, string prefix = "") => new(
        typed.Choice<Zone>(prefix + nameof(Zone)),
        typed.Maybe<Blades>(prefix + nameof(Blades)) ?? Blades.Both,
        typed.Maybe<Sides>(prefix + nameof(Sides)) ?? Sides.Both);

    /// <summary>The place in the fields, or null when no zone was chosen.</summary>
    /// <param name="typed">The form.</param>
    /// <param name="prefix">What stands before the names, for a second place.</param>
    public static Place? MaybePlace(this TypedText typed, string prefix = "") =>
        typed.Maybe<Zone>(prefix + nameof(Zone)) is null ? null : typed.PlaceAt(prefix);

    /// <summary>Writes a place into the fields.</summary>
    /// <param name="typed">The form.</param>
    /// <param name="place">The place.</param>
    /// <param name="prefix">What stands before the names, for a second place.</param>
    public static void Put(this TypedText typed, Place place, string prefix = "")
    {
        typed[prefix + nameof(Zone)] = place.Zone.ToString();
        typed[prefix + nameof(Blades)] = place.Blades == Blades.Both ? "" : place.Blades.ToString();
        typed[prefix + nameof(Sides)] = place.Sides == Sides.Both ? "" : place.Sides.ToString();
    }

    /// <summary>
    /// What pointing at a piece means when a place is chosen already: the same zone on the other side or blade is added, another
    /// zone or the same piece starts afresh.
    /// </summary>
    /// <param name="chosen">The place so far.</param>
    /// <param name="pointed">The piece that was pointed at.</param>
    public static Place And(this Place? chosen, Place pointed)
    {
        if (chosen is not { } place || place.Zone != pointed.Zone || place == pointed)
        {
            return pointed;
        }

        return new Place(
            pointed.Zone,
            place.Blades == pointed.Blades ? place.Blades : Blades.Both,
            place.Sides == pointed.Sides ? place.Sides : Sides.Both);
    }
}
