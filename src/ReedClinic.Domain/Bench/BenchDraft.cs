using ReedClinic.Domain.People;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Bench;

/// <summary>What one teacher has typed for one reed and not saved yet, so that a closed tab or a restart loses nothing.</summary>
public sealed class BenchDraft
{
    /// <summary>The longest draft that is kept, in characters.</summary>
    public const int LongestTyped = 16_000;

    private BenchDraft()
    {
    }

    /// <summary>The reed.</summary>
    public ReedId ReedId { get; private init; }

    /// <summary>The teacher.</summary>
    public AccountId Account { get; private init; }

    /// <summary>The form as it stands, as text; never queried.</summary>
    public string Typed { get; private set; } = "";

    /// <summary>When it was last kept.</summary>
    public DateTimeOffset KeptAt { get; private set; }

    /// <summary>Starts a draft.</summary>
    /// <param name="reed">The reed.</param>
    /// <param name="account">The teacher.</param>
    /// <returns>A draft with nothing typed.</returns>
    public static BenchDraft For(ReedId reed, AccountId account) => new() { ReedId = reed, Account = account };

    /// <summary>Keeps what is typed now.</summary>
    /// <param name="typed">The form as text.</param>
    /// <param name="at">When.</param>
    public void Keep(string typed, DateTimeOffset at)
    {
        ArgumentNullException.ThrowIfNull(typed);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(typed.Length, LongestTyped);
        Typed = typed;
        KeptAt = at;
    }
}
