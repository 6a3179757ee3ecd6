using Microsoft.Extensions.Options;
using ReedClinic.Domain.People;

namespace ReedClinic.Web.Shared.Circuits;

/// <summary>
/// Every circuit that is open, by whose it is. It counts them, and it can tell all pages of an account to ask anew what the
/// account may do.
/// </summary>
/// <param name="limits">How many are let in.</param>
public sealed class OpenCircuits(IOptions<CircuitLimits> limits)
{
    private readonly Lock _gate = new();
    private readonly Dictionary<AccountId, List<ThisCircuit>> _open = [];
    private readonly Dictionary<AccountId, int> _connections = [];

    /// <summary>How many pages with a circuit an account may work in.</summary>
    public int PerAccount => limits.Value.PerAccount;

    /// <summary>
    /// Makes every open page of an account ask anew, at once, whether the account may still be there. Call it after a right, a
    /// sign-in or the account itself was taken away, when that is saved.
    /// </summary>
    /// <param name="account">Whose pages.</param>
    public void TellAll(AccountId account)
    {
        foreach (var circuit in Of(account))
        {
            circuit.Tell();
        }
    }

    /// <summary>
    /// Makes every open page of everybody ask anew. Call it after something was taken away that isn't one account's, such as a
    /// guardian's consent.
    /// </summary>
    public void TellAll()
    {
        List<ThisCircuit> all;
        lock (_gate)
        {
            all = [.. _open.Values.SelectMany(circuits => circuits)];
        }

        foreach (var circuit in all)
        {
            circuit.Tell();
        }
    }

    /// <summary>Whether an account could work in one more page.</summary>
    /// <param name="account">The account.</param>
    public bool HasRoom(AccountId account)
    {
        lock (_gate)
        {
            return Seats(account) < PerAccount;
        }
    }

    /// <summary>How many circuits of an account are open, those included whose connection is down just now.</summary>
    /// <param name="account">The account.</param>
    public int CountOf(AccountId account) => Of(account).Count;

    /// <summary>Whether an account has as many connections as it may have.</summary>
    /// <param name="account">The account.</param>
    public bool AreExhausted(AccountId account)
    {
        lock (_gate)
        {
            return _connections.GetValueOrDefault(account) >= limits.Value.ConnectionsPerAccount;
        }
    }

    /// <summary>A connection came.</summary>
    /// <returns>False when it is one too many; it isn't counted then.</returns>
    internal bool Connect(AccountId account)
    {
        lock (_gate)
        {
            var now = _connections.GetValueOrDefault(account);
            if (now >= limits.Value.ConnectionsPerAccount)
            {
                return false;
            }

            _connections[account] = now + 1;
            return true;
        }
    }

    /// <summary>A connection that had been counted is gone.</summary>
    internal void Disconnect(AccountId account)
    {
        lock (_gate)
        {
            if (_connections.TryGetValue(account, out var now) && now > 1)
            {
                _connections[account] = now - 1;
            }
            else
            {
                _connections.Remove(account);
            }
        }
    }

    /// <summary>A circuit's connection is up.</summary>
    /// <returns>True when the account may work in it.</returns>
    internal bool Seat(AccountId account, ThisCircuit circuit)
    {
        lock (_gate)
        {
            if (!_open.TryGetValue(account, out var circuits))
            {
                _open[account] = circuits = [];
            }

            if (!circuits.Contains(circuit))
            {
                circuits.Add(circuit);
            }

            return circuit.IsSeated || Seats(account) < PerAccount;
        }
    }

    /// <summary>A circuit is over.</summary>
    internal void Close(AccountId account, ThisCircuit circuit)
    {
        lock (_gate)
        {
            if (_open.TryGetValue(account, out var circuits) && circuits.Remove(circuit) && circuits.Count == 0)
            {
                _open.Remove(account);
            }
        }
    }

    private int Seats(AccountId account) => _open.TryGetValue(account, out var circuits) ? circuits.Count(circuit => circuit.IsSeated) : 0;

    private List<ThisCircuit> Of(AccountId account)
    {
        lock (_gate)
        {
            return _open.TryGetValue(account, out var circuits) ? [.. circuits] : [];
        }
    }
}
