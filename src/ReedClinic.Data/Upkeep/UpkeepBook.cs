using ReedClinic.Domain.People;
using ReedClinic.Domain.Upkeep;

namespace ReedClinic.Data.Upkeep;

/// <summary>What the owners see of the machine: back-ups, room, work and mail.</summary>
public sealed class UpkeepBook(UpkeepReader reader)
{
    /// <summary>What is known; null to anybody but an owner.</summary>
    /// <param name="actor">Who asks.</param>
    /// <param name="mailIsOn">Whether mail goes anywhere.</param>
    /// <param name="stumbling">Work behind the pages that fails just now.</param>
    /// <param name="ct">Stops it.</param>
    public async Task<UpkeepFacts?> LookAsync(Actor actor, bool mailIsOn, IReadOnlyList<StumblingWork> stumbling, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(actor);
        return actor.IsOwner ? await reader.ReadAsync(mailIsOn, stumbling, ct).ConfigureAwait(false) : null;
    }
}
