namespace ReedClinic.Data.Demo;

/// <summary>A clock that is set by hand, so that the demo's year lies before today.</summary>
internal sealed class DemoClock(DateTimeOffset now) : TimeProvider
{
    private DateTimeOffset _now = now;

    public override DateTimeOffset GetUtcNow() => _now;

    /// <summary>Goes to a moment on another day.</summary>
    public void GoTo(DateTimeOffset moment) => _now = moment;

    /// <summary>Lets a little time pass.</summary>
    public void Pass(TimeSpan time) => _now += time;

    /// <summary>A new operation id at this moment.</summary>
    public Domain.People.OperationId Operation() => new(Guid.CreateVersion7(_now));
}
