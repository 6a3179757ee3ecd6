using ReedClinic.Data.Bench;
using ReedClinic.Domain.Intake;

namespace ReedClinic.Web.Features.FirstLook;

/// <summary>Whether a reed can be given its first look.</summary>
public enum FirstLookState
{
    /// <summary>It is here, fit, and nothing has been done to it.</summary>
    Open,

    /// <summary>It wasn't in the parcel.</summary>
    Missing,

    /// <summary>Nobody has said that it is here and fit to handle.</summary>
    NotArrived,

    /// <summary>It is here, and stays off the bench.</summary>
    NotFit,

    /// <summary>Work has begun, so what is tested now is no first look.</summary>
    Begun,
}

/// <summary>Tells the states apart.</summary>
public static class FirstLookStates
{
    /// <summary>The state of one reed.</summary>
    /// <param name="row">The reed and its log.</param>
    public static FirstLookState Of(ReedAtBench row) => (row.Reed.Presence, row.Reed.Fitness) switch
    {
        (Presence.Missing, _) => FirstLookState.Missing,
        (Presence.Expected, _) or (_, null) => FirstLookState.NotArrived,
        (_, not Fitness.Fit) => FirstLookState.NotFit,
        _ => row.Log.Passes.Count > 1 ? FirstLookState.Begun : FirstLookState.Open,
    };
}
