namespace ReedClinic.Domain.Intake;

/// <summary>What somebody's own words about a reed call for, before anybody plays it, posts it or takes a knife to it.</summary>
public enum Caution
{
    /// <summary>Something hurts, bleeds or is numb: that reed is left alone, and it is for a doctor or a dentist.</summary>
    Body,

    /// <summary>Somebody is or was ill: nothing is played or posted until that is over.</summary>
    Illness,

    /// <summary>Mould, a bad smell, spots, an animal: it isn't played, and not sent as it is.</summary>
    Dirt,

    /// <summary>Somebody means to scrape, sand or cut it themselves: it is sent as it is.</summary>
    Knife,
}
