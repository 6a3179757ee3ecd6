using Microsoft.AspNetCore.SignalR;
using Microsoft.Extensions.Options;
using ReedClinic.Domain.People;
using ReedClinic.Web.Account;

namespace ReedClinic.Web.Shared.Circuits;

/// <summary>
/// Who may connect for a circuit: a signed-in person, from a page of this site, not too often at once. A browser sends cookies
/// along when any page opens a socket, and tells only by <c>Origin</c> which page it was (RFC 6455, 10.2).
/// </summary>
/// <param name="open">The circuits that are open.</param>
public sealed class CircuitDoor(OpenCircuits open) : IHubFilter
{
    /// <summary>Where circuits connect.</summary>
    public const string Path = "/_blazor";

    /// <inheritdoc />
    public async Task OnConnectedAsync(HubLifetimeContext context, Func<HubLifetimeContext, Task> next)
    {
        ArgumentNullException.ThrowIfNull(context);
        ArgumentNullException.ThrowIfNull(next);
        if (context.Context.User.Account() is not { } account || !open.Connect(account))
        {
            context.Context.Abort();
            return;
        }

        context.Context.Items[nameof(CircuitDoor)] = account;
        await next(context).ConfigureAwait(false);
    }

    /// <inheritdoc />
    public async Task OnDisconnectedAsync(HubLifetimeContext context, Exception? exception, Func<HubLifetimeContext, Exception?, Task> next)
    {
        ArgumentNullException.ThrowIfNull(context);
        ArgumentNullException.ThrowIfNull(next);
        if (context.Context.Items.Remove(nameof(CircuitDoor), out var account))
        {
            open.Disconnect((AccountId)account!);
        }

        await next(context, exception).ConfigureAwait(false);
    }

    /// <summary>Answers whoever may not connect, before there is a connection.</summary>
    /// <param name="context">The request.</param>
    /// <param name="next">Lets it in.</param>
    internal static Task GuardAsync(HttpContext context, RequestDelegate next)
    {
        var path = context.Request.Path;
        if (!path.StartsWithSegments(Path, StringComparison.OrdinalIgnoreCase, out var rest))
        {
            return next(context);
        }

        var refusal = IsForeign(context) ? StatusCodes.Status403Forbidden
            : rest.HasValue && !rest.StartsWithSegments("/negotiate", StringComparison.OrdinalIgnoreCase) ? 0
            : context.User.Account() is not { } account ? StatusCodes.Status401Unauthorized
            : context.RequestServices.GetRequiredService<OpenCircuits>().AreExhausted(account) ? StatusCodes.Status429TooManyRequests
            : 0;
        if (refusal == 0)
        {
            return next(context);
        }

        context.Response.StatusCode = refusal;
        return Task.CompletedTask;
    }

    private static bool IsForeign(HttpContext context)
    {
        var origin = context.Request.Headers.Origin;
        return origin.Count > 0
            && (origin.Count > 1 || !context.RequestServices.GetRequiredService<IOptions<CircuitLimits>>().Value
                .Allows(origin.ToString(), $"{context.Request.Scheme}://{context.Request.Host}"));
    }
}
