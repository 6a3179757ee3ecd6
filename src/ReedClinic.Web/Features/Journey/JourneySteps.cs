using ReedClinic.Domain.Intake;

namespace ReedClinic.Web.Features.Journey;

/// <summary>Stages as steps of the journey.</summary>
public static class JourneySteps
{
    /// <summary>The step that a stage is drawn as.</summary>
    /// <param name="stage">Where a batch is.</param>
    /// <returns>The step.</returns>
    public static JourneyStep Step(this Stage stage) => Enum.Parse<JourneyStep>(stage.ToString());
}
