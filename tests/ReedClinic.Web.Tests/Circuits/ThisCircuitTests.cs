using System.Security.Claims;
using Microsoft.AspNetCore.Components.Authorization;
using Microsoft.Extensions.Options;
using ReedClinic.Web.Shared.Circuits;

namespace ReedClinic.Web.Tests.Circuits;

/// <summary>A circuit that is taken up again: by the same account, and by another one.</summary>
public sealed class ThisCircuitTests
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Nothing_more_is_heard_once_the_circuits_user_is_another_account()
    {
        var user = new Users();
        var circuit = new ThisCircuit(new OpenCircuits(Options.Create(new CircuitLimits())), user);
        await circuit.OnConnectionUpAsync(null!, Ct);
        var heard = 0;
        var hear = circuit.CreateInboundActivityHandler(_ =>
        {
            heard++;
            return Task.CompletedTask;
        });

        user.Become(1);
        await hear(null!);
        Assert.Equal(1, heard);

        user.Become(2);
        await hear(null!);
        user.Become(1);
        await hear(null!);
        Assert.Equal(1, heard);
    }

    private sealed class Users : AuthenticationStateProvider
    {
        public override Task<AuthenticationState> GetAuthenticationStateAsync() => Task.FromResult(Of(1));

        public void Become(int number) => NotifyAuthenticationStateChanged(Task.FromResult(Of(number)));

        private static AuthenticationState Of(int number) =>
            new(new ClaimsPrincipal(new ClaimsIdentity([new Claim(ClaimTypes.NameIdentifier, new Guid(number, 0, 0, new byte[8]).ToString())], "test")));
    }
}
