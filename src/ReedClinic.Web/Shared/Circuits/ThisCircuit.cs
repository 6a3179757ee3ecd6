using Microsoft.AspNetCore.Components.Authorization;
using Microsoft.AspNetCore.Components.Server.Circuits;
using ReedClinic.Domain.People;
using ReedClinic.Web.Account;

namespace ReedClinic.Web.Shared.Circuits;

/// <summary>
/// The circuit that a component runs on: whose it is, and whether they may work in it. While a page is drawn beforehand there
/// is none yet.
/// </summary>
/// <param name="all">Where it is counted.</param>
/// <param name="signedIn">Who is signed in on it.</param>
public sealed class ThisCircuit(OpenCircuits all, AuthenticationStateProvider signedIn) : CircuitHandler
{
    private AccountId? _account;
    private bool _changedHands;
    private bool _away;

    /// <summary>Raised when the page should ask anew what its account may do; on any thread.</summary>
    public event Action? Told;

    /// <summary>Raised when the browser is back after its connection was lost; on any thread.</summary>
    public event Action? Back;

    /// <summary>True once there is a circuit.</summary>
    public bool IsOpen { get; private set; }

    /// <summary>True while it is among the circuits that its account may work in.</summary>
    public bool IsSeated { get; private set; }

    /// <summary>Whether an account may work here: in this circuit, or, while the page is drawn beforehand, in one more.</summary>
    /// <param name="account">The account.</param>
    public bool HasRoom(AccountId account) => IsOpen ? IsSeated : all.HasRoom(account);

    /// <summary>Asks the page to ask anew.</summary>
    public void Tell() => Told?.Invoke();

    /// <inheritdoc />
    public override async Task OnConnectionUpAsync(Circuit circuit, CancellationToken cancellationToken)
    {
        if (!IsOpen)
        {
            IsOpen = true;
            _account = (await signedIn.GetAuthenticationStateAsync().ConfigureAwait(false)).User.Account();
            signedIn.AuthenticationStateChanged += Check;
        }

        var wasAway = _away;
        _away = false;
        IsSeated = _account is { } account && all.Seat(account, this);
        if (wasAway)
        {
            Back?.Invoke();
        }
    }

    /// <inheritdoc />
    public override Task OnConnectionDownAsync(Circuit circuit, CancellationToken cancellationToken)
    {
        // A closed tab and a lost network look the same: neither keeps others out.
        IsSeated = false;
        _away = true;
        return Task.CompletedTask;
    }

    /// <inheritdoc />
    public override Task OnCircuitClosedAsync(Circuit circuit, CancellationToken cancellationToken)
    {
        signedIn.AuthenticationStateChanged -= Check;
        if (_account is { } account)
        {
            all.Close(account, this);
        }

        return Task.CompletedTask;
    }

    /// <inheritdoc />
    public override Func<CircuitInboundActivityContext, Task> CreateInboundActivityHandler(Func<CircuitInboundActivityContext, Task> next) =>
        context => _changedHands ? Task.CompletedTask : next(context);

    // Whoever takes a connection up again brings their own cookie: nothing more is heard of a circuit that changed hands.
    private async void Check(Task<AuthenticationState> now)
    {
        _changedHands |= (await now.ConfigureAwait(false)).User.Account() != _account;
    }
}
